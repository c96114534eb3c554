import { describe, expect, test } from "vitest";
import {
  addSheet,
  changesOf,
  commandNamed,
  moveThings,
  moveWireEnd,
  removeSheet,
  removeThings,
  setPartField,
  splitWire,
  turnParts,
} from "../../../src/session/index.ts";
import { circuitIds, fitLamp, recordingOn, reread, twoMachines } from "./two-machines.ts";

describe("while a change is recorded", () => {
  test("what is drawn goes into that machine's change and nowhere else, one undo step each", () => {
    const session = recordingOn();
    const before = session.get().job;
    const lamp = fitLamp(session);
    const { job: now } = session.get();
    expect(now.diagram).toEqual(before.diagram);
    expect(changesOf(now, "m1")).toEqual([]);
    expect(changesOf(now, "m2")).toMatchObject([
      { note: "Work lamp fitted", parts: [{ id: lamp }], wires: [{}, {}] },
    ]);
    expect(circuitIds(session, "m2")).toContain(lamp);
    expect(circuitIds(session, "m1")).not.toContain(lamp);
    expect(reread(session)).toEqual(now);
    expect(session.get().history.done).toHaveLength(3);
    for (let step = 0; step < 3; step++) session.undo();
    expect(session.get().job).toEqual(before);
    // the recording is still on: what is drawn next begins the change again
    fitLamp(session);
    expect(changesOf(session.get().job, "m2")).toHaveLength(1);
  });

  test("what is taken out stays in the diagram, and its wires go unsaid", () => {
    const session = recordingOn();
    session.edit("Delete", (draft) => removeThings(draft, ["P1"]));
    expect(changesOf(session.get().job, "m2")).toEqual([
      { note: "Work lamp fitted", without: ["P1"] },
    ]);
    expect(circuitIds(session, "m2")).toEqual(["G1", "F1", "X1", "A1", "W1", "W4"]);
    expect(circuitIds(session, "m1")).toContain("P1");
    session.edit("Delete", (draft) => removeThings(draft, ["W1"]));
    expect(changesOf(session.get().job, "m2")[0]?.without).toEqual(["P1", "W1"]);
    expect(reread(session)).toEqual(session.get().job);
  });

  test("a module taken out keeps its cavities for the other machines", () => {
    const session = recordingOn();
    session.edit("Delete", (draft) => removeThings(draft, ["A1"]));
    expect(session.get().job.links).toEqual([{ pin: "A1:1", cavity: "X9:1" }]);
    expect(circuitIds(session, "m2")).not.toContain("A1");
  });

  test("taking out what was added takes it out of the change", () => {
    const session = recordingOn();
    const lamp = fitLamp(session);
    session.edit("Delete", (draft) => removeThings(draft, [lamp]));
    expect(changesOf(session.get().job, "m2")).toEqual([{ note: "Work lamp fitted" }]);
  });

  test("a wire joined in its middle is another wire on this machine, and whole on the others", () => {
    const session = recordingOn();
    session.edit("Split", (draft) => {
      splitWire(draft, "W2", [150, 0]);
    });
    const [change] = changesOf(session.get().job, "m2");
    expect(change?.without).toEqual(["W2"]);
    expect(change?.parts).toMatchObject([{ kind: "splice" }]);
    const splice = change?.parts?.[0]?.id;
    expect(change?.wires?.map(({ from, to }) => `${from} ${to}`).sort()).toEqual([
      `F1:2 ${splice}:1`,
      `${splice}:1 P1:1`,
    ]);
    expect(session.get().job.diagram).toEqual(twoMachines().diagram);
    expect(reread(session)).toEqual(session.get().job);
  });

  test("a wire's end taken elsewhere is another wire on this machine", () => {
    const session = recordingOn();
    session.edit("Move the end", (draft) =>
      moveWireEnd(draft, "W3", "to", { on: "pin", ref: "A1:1" }, []),
    );
    expect(changesOf(session.get().job, "m2")).toMatchObject([
      { without: ["W3"], wires: [{ from: "P1:2", to: "A1:1" }] },
    ]);
    expect(session.get().job.diagram).toEqual(twoMachines().diagram);
  });

  test("where a part is drawn is the diagram's all the same", () => {
    const session = recordingOn();
    session.edit("Move", (draft) => moveThings(draft, ["P1"], [0, 50]));
    session.edit("Turn", (draft) => turnParts(draft, ["P1"], 90));
    const lamp = session.get().job.diagram.parts.find(({ id }) => id === "P1");
    expect(lamp).toMatchObject({ at: [200, 50], turn: 90 });
    expect(changesOf(session.get().job, "m2")).toEqual([]);
  });

  test("what a diagram's part is can't be changed for one machine: it says what to do", () => {
    const session = recordingOn();
    const before = session.get().job;
    session.edit("Set amps", (draft) => setPartField(draft, "F1", "amps", 15));
    expect(session.get().job).toBe(before);
    expect(session.get().notice).toMatchObject({
      tone: "error",
      text: expect.stringMatching(/^F1 is the same on every machine: replace it/),
    });
  });

  test("a part replaced on this machine is joined as the old one was and can then be changed", () => {
    const session = recordingOn("m2", "Fuse of 15 A");
    session.show({ selection: ["F1"] });
    const replace = commandNamed("replace-here");
    expect(replace.canRun(session)).toBe(true);
    replace.run(session);
    const [fuse] = session.get().selection;
    session.edit("Set amps", (draft) => setPartField(draft, fuse as string, "amps", 15));
    const [change] = changesOf(session.get().job, "m2");
    expect(change).toMatchObject({ without: ["F1"], parts: [{ id: fuse, amps: 15 }] });
    expect(change?.wires?.map(({ from, to }) => `${from} ${to}`)).toEqual([
      `G1:+ ${fuse}:1`,
      `${fuse}:2 P1:1`,
    ]);
    expect(session.get().job.diagram).toEqual(twoMachines().diagram);
    expect(replace.canRun(session)).toBe(false);
    expect(reread(session)).toEqual(session.get().job);
  });

  test("going back to the diagram, or to another machine, ends it", () => {
    const session = recordingOn();
    expect(commandNamed("record-change").canRun(session)).toBe(false);
    commandNamed("back-to-diagram").run(session);
    expect(session.get().recording).toBeNull();
    fitLamp(session);
    expect(changesOf(session.get().job, "m2")).toEqual([]);

    const other = recordingOn();
    other.show({ machine: "m1" });
    expect(other.get().recording).toBeNull();
  });

  test("a sheet taken away goes with all that is on it, in every machine's changes too", () => {
    const session = recordingOn();
    fitLamp(session);
    session.edit("Add", (draft) => {
      addSheet(draft, {});
    });
    session.edit("Remove", (draft) => removeSheet(draft, "s1"));
    expect(session.get().job.diagram.parts).toEqual([]);
    expect(changesOf(session.get().job, "m2")).toEqual([{ note: "Work lamp fitted" }]);
    expect(reread(session)).toEqual(session.get().job);
  });
});
