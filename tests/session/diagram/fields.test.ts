import { expect, test } from "vitest";
import type { PartOf } from "../../../src/job/index.ts";
import {
  addContact,
  addPosition,
  addSource,
  pinUse,
  removeContact,
  removePosition,
  removeSource,
  renamePosition,
  setClosedIn,
  setContactPin,
  setPartField,
  setPinUse,
  setSource,
  setSpring,
  setWords,
} from "../../../src/session/index.ts";
import { drawing, edit, found } from "./drawing.ts";

const job = edit(
  drawing(
    [
      {
        id: "S1",
        kind: "switch",
        positions: ["off", "run", "start"],
        rest: "off",
        springReturn: true,
        contacts: [
          { between: ["30", "15"], closedIn: ["run", "start"] },
          { between: ["30", "50"], closedIn: ["start"] },
        ],
        control: "key",
      },
      { id: "K1", kind: "relay", poles: 2 },
      { id: "F1", kind: "fuse", amps: 10 },
      { id: "A1", kind: "module", pins: [{ id: "1" }, { id: "2" }] },
    ],
    [
      { id: "W1", from: "S1:50", to: "K1:86" },
      { id: "W2", from: "K1:30b", to: "F1:1" },
      { id: "W3", from: "S1:15", to: "F1:2", number: "15" },
    ],
  ),
  (draft) => {
    draft.machines[0]?.readings.push({
      id: "r1",
      quantity: "volts",
      red: "F1:1",
      black: "chassis",
      value: 3,
      when: { switches: { S1: "start" } },
    });
  },
);
const key = (now: typeof job) => found(now.diagram.parts, "S1") as PartOf<"switch">;
const module = (now: typeof job) => found(now.diagram.parts, "A1") as PartOf<"module">;

test("a renamed position is renamed in contacts, spring return, rest and readings", () => {
  const after = edit(job, (draft) => renamePosition(draft, "S1", "start", "crank"));
  expect(key(after).positions).toEqual(["off", "run", "crank"]);
  expect(key(after).contacts.map((contact) => contact.closedIn)).toEqual([
    ["run", "crank"],
    ["crank"],
  ]);
  expect(after.machines[0]?.readings[0]?.when.switches).toEqual({ S1: "crank" });
});

test("a position may not take the name of another", () => {
  expect(edit(job, (draft) => renamePosition(draft, "S1", "start", "run"))).toEqual(job);
});

test("a removed position is closed in no contact any more, and the last one stays", () => {
  const after = edit(job, (draft) => removePosition(draft, "S1", "start"));
  expect(key(after).contacts.map((contact) => contact.closedIn)).toEqual([["run"], []]);
  const one = edit(after, (draft) => {
    removePosition(draft, "S1", "run");
    removePosition(draft, "S1", "off");
  });
  expect(key(one).positions).toEqual(["off"]);
});

test("a spring return of every position can be narrowed to some", () => {
  const after = edit(job, (draft) => setSpring(draft, "S1", "run", false));
  expect(key(after).springReturn).toEqual(["start"]);
  const none = edit(after, (draft) => setSpring(draft, "S1", "start", false));
  expect(key(none).springReturn).toBeUndefined();
});

test("positions and contacts are added under names of their own", () => {
  const after = edit(job, (draft) => {
    addPosition(draft, "S1", "lock");
    addPosition(draft, "S1", "lock");
    addContact(draft, "S1");
    setClosedIn(draft, "S1", 2, "lock", true);
  });
  expect(key(after).positions).toEqual(["off", "run", "start", "lock"]);
  expect(key(after).contacts[2]).toEqual({ between: ["1", "2"], closedIn: ["lock"] });
});

test("wires on a pin that a contact gave up go with it", () => {
  const moved = edit(job, (draft) => setContactPin(draft, "S1", 1, 1, "19"));
  expect(moved.diagram.wires.map((wire) => wire.id)).toEqual(["W2", "W3"]);
  const removed = edit(job, (draft) => removeContact(draft, "S1", 1));
  expect(removed.diagram.wires.map((wire) => wire.id)).toEqual(["W2", "W3"]);
});

test("a contact is not put on one pin twice", () => {
  expect(edit(job, (draft) => setContactPin(draft, "S1", 0, 1, "30"))).toEqual(job);
});

test("a relay with fewer contact sets loses the wires of those gone", () => {
  const after = edit(job, (draft) => setPartField(draft, "K1", "poles", 1));
  expect(after.diagram.wires.map((wire) => wire.id)).toEqual(["W1", "W3"]);
});

test("a field taken away is absent, not undefined", () => {
  const after = edit(job, (draft) => setPartField(draft, "F1", "amps", undefined));
  expect("amps" in found(after.diagram.parts, "F1")).toBe(false);
});

test("words are written on parts, wires and pins, and emptied ones are taken away", () => {
  const after = edit(job, (draft) => {
    setWords(draft, "F1", { label: "main" });
    setWords(draft, "W3", { number: "", colour: { base: "BK", tracer: "WH" } });
    setWords(draft, "A1:2", { printed: "GND" });
  });
  expect(found(after.diagram.parts, "F1").label).toBe("main");
  expect(found(after.diagram.wires, "W3")).toEqual({
    id: "W3",
    from: "S1:15",
    to: "F1:2",
    colour: { base: "BK", tracer: "WH" },
  });
  expect(module(after).pins[1]).toEqual({ id: "2", printed: "GND" });
});

test("writing the words that stand there already changes nothing", () => {
  expect(edit(job, (draft) => setWords(draft, "W3", { number: "15" }))).toBe(job);
});

test("a pin feeds the module, grounds it, or neither", () => {
  const fed = edit(job, (draft) => {
    setPinUse(draft, "A1", "1", "supply");
    setPinUse(draft, "A1", "2", "ground");
  });
  expect(module(fed).power).toEqual({ supply: ["1"], ground: ["2"] });
  expect(pinUse(module(fed), "2")).toBe("ground");
  const bare = edit(fed, (draft) => {
    setPinUse(draft, "A1", "1", "none");
    setPinUse(draft, "A1", "2", "none");
  });
  expect(module(bare).power).toBeUndefined();
});

test("what a module gives out is added, set and taken away", () => {
  const given = edit(job, (draft) => {
    addSource(draft, "A1");
    setSource(draft, "A1", 0, { plus: "2", minus: "1", volts: 10, ohms: 0 });
  });
  expect(module(given).sources).toEqual([{ between: ["2", "1"], volts: 10, ohms: 0 }]);
  const gone = edit(given, (draft) => removeSource(draft, "A1", 0));
  expect(module(gone).sources).toBeUndefined();
});
