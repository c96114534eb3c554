import { expect, test } from "vitest";
import { renamePart, renamePin, whyNotId, whyNotPin } from "../../../src/session/index.ts";
import { drawing, edit, found } from "./drawing.ts";

const job = edit(
  drawing(
    [
      {
        id: "A1",
        kind: "module",
        pins: [{ id: "1" }, { id: "2" }, { id: "3" }],
        power: { supply: ["1"], ground: ["2"] },
        sources: [{ between: ["3", "2"], volts: 5, ohms: 100 }],
        behaviour: { paths: [{ between: ["1", "3"], input: "2", does: "follow" }] },
      },
      {
        id: "S1",
        kind: "switch",
        positions: ["off", "on"],
        contacts: [{ between: ["1", "2"], closedIn: ["on"] }],
        control: "operator",
      },
    ],
    [{ id: "W1", from: "A1:1", to: "S1:2" }],
  ),
  (draft) => {
    draft.links.push({ pin: "A1:1", cavity: "P1:1" });
    const machine = draft.machines[0];
    machine?.readings.push({
      id: "r1",
      quantity: "volts",
      red: "A1:1",
      black: "S1:2",
      value: 3,
      when: { switches: { S1: "on" }, unplugged: ["A1"], removed: ["S1"] },
    });
    machine?.trials.push({
      id: "t1",
      when: { unplugged: ["A1"] },
      saw: [{ part: "A1", state: "on" }],
    });
    if (machine) {
      machine.changes = [
        { without: ["A1"], wires: [{ id: "W9", from: "A1:2", to: "S1:1" }], note: "retrofit" },
      ];
    }
    draft.standIns = [{ id: "si", kind: "relay", replaces: "A1", map: [] }];
  },
);

test("renaming a part renames it everywhere and nowhere else", () => {
  const before = JSON.stringify(job);
  const after = edit(job, (draft) => renamePart(draft, "A1", "A7"));
  expect(JSON.stringify(after)).toBe(before.replaceAll('"A1"', '"A7"').replaceAll('"A1:', '"A7:'));
});

test("renaming a switch keeps the positions that readings were taken in", () => {
  const after = edit(job, (draft) => renamePart(draft, "S1", "S9"));
  expect(after.machines[0]?.readings[0]?.when).toEqual({
    switches: { S9: "on" },
    unplugged: ["A1"],
    removed: ["S9"],
  });
});

test("renaming back gives the first document", () => {
  const there = edit(job, (draft) => renamePart(draft, "A1", "A7"));
  expect(edit(there, (draft) => renamePart(draft, "A7", "A1"))).toEqual(job);
});

test("an id in use, an empty one, a colon and the name of a probe are refused", () => {
  expect(whyNotId(job, "A1", "S1")).toMatch(/in use/);
  expect(whyNotId(job, "A1", "machine1")).toMatch(/in use/);
  expect(whyNotId(job, "A1", "")).not.toBeNull();
  expect(whyNotId(job, "A1", "A:1")).toMatch(/colon/);
  expect(whyNotId(job, "A1", "chassis")).not.toBeNull();
  expect(whyNotId(job, "A1", "A1")).toBeNull();
  expect(whyNotId(job, "A1", "A2")).toBeNull();
});

test("renaming a module's pin renames it in power, sources, behaviour, wires, links and readings", () => {
  const after = edit(job, (draft) => {
    renamePin(draft, "A1", "1", "C");
    renamePin(draft, "A1", "2", "D");
  });
  expect(found(after.diagram.parts, "A1")).toMatchObject({
    pins: [{ id: "C" }, { id: "D" }, { id: "3" }],
    power: { supply: ["C"], ground: ["D"] },
    sources: [{ between: ["3", "D"] }],
    behaviour: { paths: [{ between: ["C", "3"], input: "D" }] },
  });
  expect(after.diagram.wires[0]?.from).toBe("A1:C");
  expect(after.links[0]?.pin).toBe("A1:C");
  expect(after.machines[0]?.readings[0]?.red).toBe("A1:C");
  expect(after.machines[0]?.changes?.[0]?.wires?.[0]?.from).toBe("A1:D");
});

test("renaming a switch's pin renames its contacts", () => {
  const after = edit(job, (draft) => renamePin(draft, "S1", "2", "15"));
  expect(found(after.diagram.parts, "S1")).toMatchObject({ contacts: [{ between: ["1", "15"] }] });
  expect(after.diagram.wires[0]?.to).toBe("S1:15");
});

test("a mark that the module has already is refused", () => {
  expect(whyNotPin(found(job.diagram.parts, "A1"), "1", "2")).not.toBeNull();
  expect(whyNotPin(found(job.diagram.parts, "A1"), "1", "4")).toBeNull();
});

test("a switch that is renamed keeps its turn in a trial: the switches are done in that order", () => {
  const both = edit(job, (draft) => {
    draft.machines[0]?.trials.push({
      id: "t2",
      when: { switches: { S1: "on", S2: "on" } },
      saw: [],
    });
  });
  const after = edit(both, (draft) => renamePart(draft, "S1", "S9"));
  const when = after.machines[0]?.trials.find(({ id }) => id === "t2")?.when;
  expect(Object.keys(when?.switches ?? {})).toEqual(["S9", "S2"]);
});
