import { describe, expect, test } from "vitest";
import {
  addPart,
  changesOf,
  commandNamed,
  drawnOf,
  layWire,
  moveThings,
  removeThings,
  renamePart,
  setPartField,
  turnParts,
} from "../../../src/session/index.ts";
import { drawWire, fitLamp, ids, recordingOn, reread, twoMachines } from "./two-machines.ts";

describe("when nothing is recorded", () => {
  /** The lamp is fitted on machine m2, which is at hand; the board is back at the diagram. */
  function fitted() {
    const session = recordingOn();
    const lamp = fitLamp(session);
    commandNamed("back-to-diagram").run(session);
    return { session, lamp };
  }

  test("moving, turning, renaming and setting an added part edits the change's own", () => {
    const { session, lamp } = fitted();
    const { diagram } = session.get().job;
    session.edit("Move", (draft) => moveThings(draft, [lamp], [0, 40]));
    session.edit("Turn", (draft) => turnParts(draft, [lamp], 90));
    session.edit("Set", (draft) => setPartField(draft, lamp, "watts", 55));
    session.edit("Rename", (draft) => renamePart(draft, lamp, "P20"));
    const [change] = changesOf(session.get().job, "m2");
    expect(change?.parts).toMatchObject([{ id: "P20", at: [200, 140], turn: 90, watts: 55 }]);
    expect(change?.wires).toMatchObject([{ to: "P20:1" }, { from: "P20:2" }]);
    expect(session.get().job.diagram).toEqual(diagram);
    expect(reread(session)).toEqual(session.get().job);
  });

  test("a diagram's part renamed is renamed in the changes, and keeps its place", () => {
    const { session } = fitted();
    session.edit("Rename", (draft) => renamePart(draft, "F1", "F7"));
    expect(ids(session.get().job.diagram.parts)).toEqual(["G1", "F7", "P1", "X1", "A1"]);
    expect(changesOf(session.get().job, "m2")[0]?.wires?.[0]?.from).toBe("F7:2");
    expect(reread(session)).toEqual(session.get().job);
  });

  test("what is drawn is the diagram's, but for what hangs on a part of a change", () => {
    const { session, lamp } = fitted();
    let horn = "";
    session.edit("Place horn", (draft) => {
      horn = addPart(draft, "horn", "s1", [200, 200]);
    });
    drawWire(session, "F1:2", `${horn}:1`);
    expect(ids(session.get().job.diagram.parts)).toContain(horn);
    expect(session.get().job.diagram.wires).toHaveLength(5);
    drawWire(session, `${lamp}:1`, `${horn}:1`);
    expect(session.get().job.diagram.wires).toHaveLength(5);
    expect(changesOf(session.get().job, "m2")[0]?.wires).toHaveLength(3);
    expect(reread(session)).toEqual(session.get().job);
  });

  test("a wire drawn from an added part into the middle of a diagram's wire makes the joint a change", () => {
    const { session, lamp } = fitted();
    session.edit("Draw a wire", (draft) => {
      layWire(draft, {
        sheet: "s1",
        from: { on: "pin", ref: `${lamp}:1` },
        to: { on: "wire", wire: "W1", at: [50, 0] },
        corners: [],
      });
    });
    expect(session.get().job.diagram).toEqual(twoMachines().diagram);
    const [change] = changesOf(session.get().job, "m2");
    expect(change?.without).toEqual(["W1"]);
    expect(change?.parts?.map(({ kind }) => kind)).toEqual(["lamp", "splice"]);
    expect(reread(session)).toEqual(session.get().job);
  });

  test("a diagram's part taken out takes along what hung on it on any machine", () => {
    const { session } = fitted();
    session.show({ machine: "m1" });
    session.edit("Delete", (draft) => removeThings(draft, ["F1"]));
    expect(changesOf(session.get().job, "m2")[0]?.wires).toHaveLength(1);
    expect(reread(session)).toEqual(session.get().job);
    session.undo();
    expect(changesOf(session.get().job, "m2")[0]?.wires).toHaveLength(2);
  });

  test("the board shows the circuit of the machine at hand", () => {
    const { session, lamp } = fitted();
    expect(ids(drawnOf(session.get()).diagram.parts)).toContain(lamp);
    session.show({ machine: "m1" });
    expect(drawnOf(session.get())).toBe(session.get().job);
  });
});
