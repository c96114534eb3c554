import { describe, expect, test } from "vitest";
import {
  changeRows,
  changesDrawn,
  changesOf,
  goOnRecording,
  newRecording,
  putBack,
  removeThings,
  setChangeNote,
  takeBackChange,
} from "../../../src/session/index.ts";
import { circuitIds, fitLamp, ids, recordingOn, twoMachines } from "./two-machines.ts";

describe("the list of changes", () => {
  function twoChanges() {
    const session = recordingOn();
    const lamp = fitLamp(session);
    session.show({ recording: newRecording(session.get().job, "m2", "Fuse bridged") });
    session.edit("Delete", (draft) => removeThings(draft, ["F1"]));
    session.show({ recording: null });
    return { session, lamp };
  }

  test("says what each added and left out, and where to look for it", () => {
    const { session, lamp } = twoChanges();
    const [fit, bridge] = changeRows(session.get().job, "m2");
    expect(fit).toMatchObject({ note: "Work lamp fitted", leftOut: [] });
    expect(fit).toMatchObject({ parts: [lamp], wires: 2 });
    expect(fit?.refs).toContain(lamp);
    expect(bridge).toMatchObject({ note: "Fuse bridged", parts: [], wires: 0, leftOut: ["F1"] });
    // the fuse is gone: what its wires ended on is where it was
    expect(bridge?.refs).toEqual(["G1", "P1"]);
  });

  test("tells the board what is added and what is gone, wires that went unsaid included", () => {
    const { session, lamp } = twoChanges();
    const drawn = changesDrawn(session.get().job, "m2");
    expect(drawn?.added.has(lamp)).toBe(true);
    expect(drawn?.added.has("P1")).toBe(false);
    expect([...(drawn?.goneParts ?? [])]).toEqual(["F1"]);
    expect(ids(drawn?.ghosts.wires ?? []).filter((id) => /^W[12]$/.test(id))).toEqual(["W1", "W2"]);
    expect(changesDrawn(session.get().job, "m1")).toBeNull();
  });

  test("a change taken back brings back what it was without, in one undo step", () => {
    const { session, lamp } = twoChanges();
    const steps = session.get().history.done.length;
    takeBackChange(session, 1);
    expect(session.get().history.done).toHaveLength(steps + 1);
    expect(circuitIds(session, "m2")).toContain("F1");
    takeBackChange(session, 0);
    expect(circuitIds(session, "m2")).not.toContain(lamp);
    expect(session.get().job).toEqual({
      ...twoMachines(),
      machines: [twoMachines().machines[0], { ...twoMachines().machines[1] }],
    });
    session.undo();
    expect(circuitIds(session, "m2")).toContain(lamp);
  });

  test("one thing left out can be put back by itself", () => {
    const { session } = twoChanges();
    putBack(session, 1, "F1");
    expect(circuitIds(session, "m2")).toContain("F1");
    expect(changesOf(session.get().job, "m2")[1]).toEqual({ note: "Fuse bridged" });
  });

  test("its note can be written anew while it is being recorded", () => {
    const { session } = twoChanges();
    session.show({ recording: goOnRecording(session.get().job, "m2", 1) });
    setChangeNote(session, 1, "Fuse taken out");
    expect(session.get().recording?.note).toBe("Fuse taken out");
    takeBackChange(session, 0);
    session.edit("Delete", (draft) => removeThings(draft, ["P1"]));
    expect(changesOf(session.get().job, "m2")).toEqual([
      { note: "Fuse taken out", without: ["F1", "P1"] },
    ]);
    // undone up to where the note was another one, nothing would know where to write to
    for (let step = 0; step < 3; step++) session.undo();
    expect(session.get().recording).toBeNull();
  });

  test("an earlier change recorded further is written to, and a later one keeps its own", () => {
    const { session, lamp } = twoChanges();
    session.show({ recording: goOnRecording(session.get().job, "m2", 0) });
    session.edit("Delete", (draft) => removeThings(draft, ["P1"]));
    const [fit, bridge] = changesOf(session.get().job, "m2");
    expect(fit?.without).toEqual(["P1"]);
    expect(bridge?.without).toEqual(["F1"]);
    session.edit("Delete", (draft) => removeThings(draft, [lamp]));
    expect(changesOf(session.get().job, "m2")[0]?.parts).toBeUndefined();
  });
});
