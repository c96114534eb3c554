import { expect, test } from "vitest";
import { jobSchema, writeJobText } from "../../../src/job/index.ts";
import {
  createSession,
  doStep,
  keepRecording,
  recordingsOf,
  removeRecording,
  renamePart,
  renamePosition,
  renameRecording,
  showOperate,
  startOperating,
  stepsToKeep,
} from "../../../src/session/index.ts";
import { smallJob } from "../support/small-job.ts";

function played() {
  const session = createSession("job1", smallJob());
  startOperating(session);
  doStep(session, { do: "turn", switch: "S1", position: "pressed" });
  doStep(session, { do: "wait", seconds: 1.5 });
  doStep(session, { do: "wait", seconds: 0.5 });
  doStep(session, { do: "release", switch: "S1" });
  const kept = () => recordingsOf(session.get().job, "machine1");
  return { session, kept };
}

test("keeping the steps is one edit with the machine, waits in a row as one", () => {
  const { session, kept } = played();
  keepRecording(session, "Pump on");
  expect(kept()).toEqual([
    {
      id: "recording1",
      name: "Pump on",
      steps: [
        { do: "turn", switch: "S1", position: "pressed" },
        { do: "wait", seconds: 2 },
        { do: "release", switch: "S1" },
      ],
    },
  ]);
  expect(session.get().history.done).toHaveLength(1);
  session.undo();
  expect(kept()).toEqual([]);
});

test("what is kept is read back from the file as it was", () => {
  const { session, kept } = played();
  keepRecording(session, "Pump on");
  const read = jobSchema.parse(JSON.parse(writeJobText(session.get().job)));
  expect(read.machines[0]?.recordings).toEqual(kept());
});

test("a step that was refused is not kept", () => {
  const { session, kept } = played();
  const { played: steps } = session.get().operate;
  showOperate(session, {
    played: steps.map((one, index) => ({
      ...one,
      outcome: { seconds: 0, events: [], refused: index === 0 ? "No such switch." : null },
    })),
  });
  keepRecording(session, "Rest");
  expect(kept()[0]?.steps.map((step) => step.do)).toEqual(["wait", "release"]);
});

test("nothing done is nothing to keep", () => {
  const session = createSession("job1", smallJob());
  keepRecording(session, "Nothing");
  expect(session.get().history.done).toHaveLength(0);
});

test("renaming and deleting are one undo step each", () => {
  const { session, kept } = played();
  keepRecording(session, "Pump on");
  keepRecording(session, "Pump again");
  renameRecording(session, "recording2", "Pump off");
  expect(kept().map(({ name }) => name)).toEqual(["Pump on", "Pump off"]);
  removeRecording(session, "recording1");
  expect(kept().map(({ id }) => id)).toEqual(["recording2"]);
  expect(session.get().history.done).toHaveLength(4);
  session.undo();
  session.undo();
  expect(kept().map(({ name }) => name)).toEqual(["Pump on", "Pump again"]);
});

test("waits in which a great deal happens stay apart, so that each can be gone through again", () => {
  const flashes = (count: number) =>
    Array.from({ length: count }, (_, n) => ({ seconds: n, what: "on", part: "P1" }) as const);
  const wait = (count: number) => ({
    step: { do: "wait", seconds: 60 } as const,
    outcome: { seconds: 60, events: flashes(count), refused: null },
  });
  expect(stepsToKeep([wait(50), wait(50)])).toEqual([{ do: "wait", seconds: 120 }]);
  expect(stepsToKeep([wait(150), wait(150)])).toHaveLength(2);
});

test("a part and a position that are renamed keep their name in what was recorded", () => {
  const session = createSession("job1", smallJob());
  session.edit("Draw", (draft) => {
    draft.diagram.parts.push({
      id: "S1",
      kind: "switch",
      sheet: "sheet1",
      at: [0, 0],
      turn: 0,
      positions: ["off", "on"],
      contacts: [{ between: ["1", "2"], closedIn: ["on"] }],
      control: "operator",
    });
  });
  startOperating(session);
  doStep(session, { do: "turn", switch: "S1", position: "on" });
  doStep(session, { do: "remove", id: "F1" });
  keepRecording(session, "Dark");
  session.edit("Rename", (draft) => {
    renamePart(draft, "S1", "S5");
    renamePart(draft, "F1", "F7");
    renamePosition(draft, "S5", "on", "work");
  });
  expect(recordingsOf(session.get().job, "machine1")[0]?.steps).toEqual([
    { do: "turn", switch: "S5", position: "work" },
    { do: "remove", id: "F7" },
  ]);
});
