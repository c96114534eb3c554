import { expect, test } from "vitest";
import {
  COMMANDS,
  commandNamed,
  createSession,
  doStep,
  newDraft,
  stepWords,
} from "../../../src/session/index.ts";
import { smallJob } from "../support/small-job.ts";

const operating = () => {
  const session = createSession("job1", smallJob());
  commandNamed("operate").run(session);
  return session;
};

test("every command that edits the drawing rests while it is operated", () => {
  const session = createSession("job1", smallJob());
  session.show({ selection: ["F1", "W1"] });
  const editing = ["delete", "turn", "nudge-left", "align-left", "wire-tool", "place-part", "cut"];
  for (const id of editing) expect(commandNamed(id).canRun(session), id).toBe(true);
  commandNamed("operate").run(session);
  session.show({ selection: ["F1", "W1"] });
  for (const id of editing) expect(commandNamed(id).canRun(session), id).toBe(false);
  expect(commandNamed("zoom-to-fit").canRun(session)).toBe(true);
});

test("Escape goes back step by step, and out at the end", () => {
  const session = operating();
  const back = commandNamed("back");
  session.show({
    selection: ["F1"],
    operate: { ...session.get().operate, leads: { red: null, black: null, asks: "red" } },
  });
  back.run(session);
  expect(session.get().operate.leads.asks).toBeNull();
  expect(session.get().selection).toEqual(["F1"]);
  back.run(session);
  expect(session.get().selection).toEqual([]);
  expect(session.get().operate.on).toBe(true);
  back.run(session);
  expect(session.get().operate.on).toBe(false);
});

test("one key leads in and out; the tool in hand is put down", () => {
  const session = createSession("job1", smallJob());
  session.show({ tool: { name: "wire", free: false } });
  const byKey = () =>
    COMMANDS.find((one) => one.keys?.includes("O") && one.canRun(session))?.run(session);
  byKey();
  expect(session.get().operate.on).toBe(true);
  expect(session.get().tool.name).toBe("select");
  byKey();
  expect(session.get().operate.on).toBe(false);
});

test("there is nothing to operate on an empty drawing, or while a reading is entered", () => {
  const empty = createSession("job1", {
    ...smallJob(),
    diagram: { sheets: [], parts: [], wires: [] },
  });
  expect(commandNamed("operate").canRun(empty)).toBe(false);
  const reading = createSession("job1", smallJob());
  reading.show({ draft: newDraft() });
  expect(commandNamed("operate").canRun(reading)).toBe(false);
});

test("letting go releases every switch that a spring would take back", () => {
  const job = smallJob();
  job.diagram.parts.push({
    id: "S1",
    kind: "switch",
    sheet: "sheet1",
    at: [0, 0],
    turn: 0,
    positions: ["off", "run", "start"],
    rest: "off",
    springReturn: ["start"],
    contacts: [{ between: ["1", "2"], closedIn: ["start"] }],
    control: "key",
  });
  const session = createSession("job1", job);
  commandNamed("operate").run(session);
  const letGo = commandNamed("let-go");
  expect(letGo.canRun(session)).toBe(false);
  doStep(session, { do: "turn", switch: "S1", position: "run" });
  expect(letGo.canRun(session)).toBe(false);
  doStep(session, { do: "turn", switch: "S1", position: "start" });
  letGo.run(session);
  expect(
    session
      .get()
      .operate.played.map(({ step }) => stepWords(step))
      .at(-1),
  ).toBe("Let go of S1");
});

test("there is nothing to operate before a wire is drawn", () => {
  const job = smallJob();
  const session = createSession("job1", { ...job, diagram: { ...job.diagram, wires: [] } });
  expect(commandNamed("operate").canRun(session)).toBe(false);
  expect(commandNamed("operate").canRun(createSession("job1", job))).toBe(true);
});
