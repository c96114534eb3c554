import { expect, test } from "vitest";
import {
  COMMANDS,
  chordText,
  commandFor,
  commandNamed,
  createSession,
  type KeyPress,
  matchesChord,
} from "../../../src/session/index.ts";
import { smallJob } from "../support/small-job.ts";

const press = (key: string, held: Partial<KeyPress> = {}): KeyPress => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
});

test("a chord matches its own keys and no others", () => {
  expect(matchesChord("Mod+Z", press("z", { ctrlKey: true }))).toBe(true);
  expect(matchesChord("Mod+Z", press("z", { metaKey: true }))).toBe(true);
  expect(matchesChord("Mod+Z", press("Z", { ctrlKey: true, shiftKey: true }))).toBe(false);
  expect(matchesChord("Mod+Shift+Z", press("Z", { ctrlKey: true, shiftKey: true }))).toBe(true);
  expect(matchesChord("M", press("m"))).toBe(true);
  expect(matchesChord("M", press("m", { altKey: true }))).toBe(false);
  expect(matchesChord("M", press("m", { ctrlKey: true }))).toBe(false);
  expect(matchesChord("Shift+ArrowLeft", press("ArrowLeft", { shiftKey: true }))).toBe(true);
  expect(matchesChord("ArrowLeft", press("ArrowLeft", { shiftKey: true }))).toBe(false);
});

test("a sign is matched as typed, whether or not its keyboard needs Shift for it", () => {
  expect(matchesChord("?", press("?", { shiftKey: true }))).toBe(true);
  expect(matchesChord("/", press("/"))).toBe(true);
  expect(matchesChord("/", press("/", { shiftKey: true }))).toBe(true);
  expect(matchesChord("+", press("+", { shiftKey: true }))).toBe(true);
  expect(matchesChord("Mod++", press("+", { ctrlKey: true }))).toBe(true);
  expect(matchesChord("+", press("+", { ctrlKey: true }))).toBe(false);
});

test("ids are unique, and no key means two things", () => {
  const ids = COMMANDS.map((command) => command.id);
  expect(new Set(ids).size).toBe(ids.length);
  const chords = COMMANDS.flatMap((command) => command.keys ?? []);
  expect(chords.filter((chord, n) => chords.indexOf(chord) < n)).toEqual([]);
});

test("the keyboard runs only what can run", () => {
  const session = createSession("one", smallJob());
  const undo = press("z", { ctrlKey: true });
  expect(commandFor(COMMANDS, undo, session)).toBeNull();
  session.edit("Rename", (draft) => {
    draft.title = "Another";
  });
  expect(commandFor(COMMANDS, undo, session)?.id).toBe("undo");
  expect(commandNamed("undo").detail?.(session)).toBe("Rename");
});

test("escape backs out one step at a time, the topmost thing first", () => {
  const session = createSession("one", smallJob());
  const back = commandNamed("back");
  session.show({ selection: ["F1"], tool: { name: "wire", free: false }, dialog: "find" });
  back.run(session);
  expect(session.get()).toMatchObject({ dialog: null, tool: { name: "wire" } });
  back.run(session);
  expect(session.get()).toMatchObject({ tool: { name: "select" }, selection: ["F1"] });
  back.run(session);
  expect(session.get().selection).toEqual([]);
  expect(back.canRun(session)).toBe(false);
});

test("undo and redo say what they would act on, and selection is no part of them", () => {
  const session = createSession("one", smallJob());
  session.edit("Rename the job", (draft) => {
    draft.title = "Another";
  });
  session.show({ selection: ["F1"] });
  commandNamed("undo").run(session);
  expect(session.get()).toMatchObject({ job: { title: "Beacon" }, selection: ["F1"] });
  session.show({ selection: [] });
  expect(commandNamed("redo").detail?.(session)).toBe("Rename the job");
  commandNamed("redo").run(session);
  expect(session.get().job.title).toBe("Another");
});

test("keys are called what the keyboard calls them", () => {
  expect(
    ["ArrowLeft", "Shift+ArrowDown", "Escape", "Delete", "Mod++", "+", "F2"].map((chord) =>
      chordText(chord),
    ),
  ).toEqual(["←", "Shift+↓", "Esc", "Del", "Ctrl++", "+", "F2"]);
});
