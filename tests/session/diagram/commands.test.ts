import { expect, test } from "vitest";
import { commandNamed, createSession, onViewRequest } from "../../../src/session/index.ts";
import { drawing } from "./drawing.ts";

function opened() {
  const job = drawing(
    [
      { id: "F1", kind: "fuse", at: [0, 0] },
      { id: "F2", kind: "fuse", at: [400, 0] },
      { id: "A1", kind: "module", at: [200, 400], pins: [{ id: "1" }, { id: "2" }] },
    ],
    [
      { id: "W1", from: "F1:2", to: "F2:1" },
      { id: "W2", from: "F2:2", to: "A1:1" },
    ],
  );
  return createSession("k", job);
}
const run = (session: ReturnType<typeof opened>, id: string) => {
  const command = commandNamed(id);
  expect(command.canRun(session)).toBe(true);
  command.run(session);
};

test("every command is one undo step", () => {
  for (const id of ["turn", "duplicate", "cut", "delete", "nudge-left", "align-top"]) {
    const session = opened();
    const before = session.get().job;
    session.show({ selection: ["F1", "A1"] });
    run(session, id);
    expect(session.get().history.done).toHaveLength(1);
    session.undo();
    expect(session.get().job).toEqual(before);
  }
});

test("nothing chosen, nothing to turn, copy, delete or nudge", () => {
  const session = opened();
  for (const id of [
    "turn",
    "copy",
    "duplicate",
    "delete",
    "nudge-up",
    "align-left",
    "edit-words",
  ]) {
    expect(commandNamed(id).canRun(session)).toBe(false);
  }
});

test("what was copied can be pasted again and again, each time beside the last", () => {
  const session = opened();
  session.show({ selection: ["F1", "F2"] });
  run(session, "copy");
  run(session, "paste");
  run(session, "paste");
  const { diagram } = session.get().job;
  expect(diagram.parts).toHaveLength(7);
  expect(new Set(diagram.parts.map((part) => part.at.join())).size).toBe(7);
  expect(diagram.wires).toHaveLength(4);
  expect(session.get().selection).toEqual(["F5", "F6", "W4"]);
});

test("deleting a chosen pin takes it and its wire, and leaves the module", () => {
  const session = opened();
  session.show({ selection: ["A1:1"] });
  run(session, "delete");
  const { diagram } = session.get().job;
  expect(diagram.parts.find((part) => part.id === "A1")).toMatchObject({ pins: [{ id: "2" }] });
  expect(diagram.wires.map((wire) => wire.id)).toEqual(["W1"]);
});

test("everything on the sheet can be chosen at once", () => {
  const session = opened();
  run(session, "select-all");
  expect([...session.get().selection].sort()).toEqual(["A1", "F1", "F2", "W1", "W2"]);
});

test("what only the view can do is asked of it", () => {
  const session = opened();
  const asked: unknown[] = [];
  const stop = onViewRequest((request) => asked.push(request));
  session.show({ selection: ["A1:2"] });
  run(session, "edit-words");
  run(session, "zoom-to-fit");
  stop();
  run(session, "zoom-in");
  expect(asked).toEqual([{ ask: "edit", ref: "A1:2" }, { ask: "fit" }]);
});
