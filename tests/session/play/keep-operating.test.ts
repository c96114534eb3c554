import { expect, onTestFinished, test } from "vitest";
import {
  backTo,
  beginReplay,
  bringBack,
  createSession,
  doStep,
  endReplay,
  keepOperating,
  keepRecording,
  nextReplayStep,
  placeLead,
  replayTo,
  runReplay,
  showOperate,
  startOperating,
  startOver,
  stepWords,
  stopOperating,
} from "../../../src/session/index.ts";
import { fakePlays, handClock, settled } from "../support/fake-play.ts";
import { smallJob } from "../support/small-job.ts";

const press = { do: "turn", switch: "S1", position: "pressed" } as const;
const letGo = { do: "release", switch: "S1" } as const;

function desk(at: "once" | "when-let" = "once") {
  const session = createSession("job1", smallJob());
  const { open, ports } = fakePlays(at);
  const clock = handClock();
  onTestFinished(keepOperating(session, open, clock));
  const done = () => session.get().operate.played.map(({ step }) => stepWords(step));
  return { session, ports, clock, done, live: () => session.get().operate.live };
}

test("nothing is worked out before somebody operates, nor after", async () => {
  const { session, ports } = desk();
  await settled();
  expect(ports).toHaveLength(0);
  startOperating(session);
  await settled();
  expect(ports).toHaveLength(1);
  stopOperating(session);
  expect(ports[0]?.stopped).toBe(true);
});

test("a step is answered with the state after it and what happened because of it", async () => {
  const { session, live } = desk();
  startOperating(session);
  doStep(session, press);
  await settled();
  expect(live()?.parts.P1?.on).toBe(true);
  expect(session.get().operate.played[0]?.outcome?.events).toMatchObject([
    { what: "on", part: "P1" },
  ]);
});

test("a step that can't be done says why, and the next one is done all the same", async () => {
  const { session, live } = desk();
  startOperating(session);
  doStep(session, { do: "turn", switch: "S9", position: "on" });
  doStep(session, press);
  await settled();
  expect(session.get().operate.played[0]?.outcome?.refused).toContain("S9");
  expect(live()?.parts.P1?.on).toBe(true);
});

test("the play is no part of the document: no undo step, nothing to save", async () => {
  const { session } = desk();
  const before = session.get().job;
  startOperating(session);
  doStep(session, press);
  await settled();
  expect(session.get().job).toBe(before);
  expect(session.get().history.done).toHaveLength(0);
});

test("a new job is not being operated", async () => {
  const { session, ports } = desk();
  startOperating(session);
  doStep(session, press);
  await settled();
  session.open("job2", smallJob());
  expect(session.get().operate.on).toBe(false);
  expect(session.get().operate.played).toEqual([]);
  expect(ports.every((port) => port.stopped)).toBe(true);
});

test("an edit of the circuit begins another play that does the same steps", async () => {
  const { session, ports, live } = desk();
  startOperating(session);
  doStep(session, press);
  await settled();
  session.edit("Delete W5", (draft) => {
    draft.diagram.wires = draft.diagram.wires.filter((wire) => wire.id !== "W5");
  });
  await settled();
  expect(ports).toHaveLength(2);
  expect(ports[0]?.stopped).toBe(true);
  expect(ports[1]?.job.diagram.wires).toHaveLength(4);
  expect(ports[1]?.asked).toEqual([press]);
  expect(live()?.parts.P1?.on).toBe(true);
  session.undo();
  await settled();
  expect(ports[2]?.asked).toEqual([press]);
  expect(live()?.parts.P1?.on).toBe(true);
});

test("an edit that is no part of the circuit leaves the play alone", async () => {
  const { session, ports } = desk();
  startOperating(session);
  doStep(session, press);
  await settled();
  session.edit("Rename", (draft) => {
    draft.title = "Other";
  });
  keepRecording(session, "Pressed");
  await settled();
  expect(ports).toHaveLength(1);
});

test("an answer that comes too late is never shown", async () => {
  const { session, ports, live } = desk("when-let");
  startOperating(session);
  await ports[0]?.answer();
  expect(live()?.seconds).toBe(0);
  doStep(session, press);
  await settled();
  session.edit("Delete W5", (draft) => {
    draft.diagram.wires = [];
  });
  await ports[1]?.answer();
  await ports[0]?.answer();
  expect(session.get().operate.played[0]?.outcome).toBeNull();
  await ports[1]?.answer();
  expect(session.get().operate.played[0]?.outcome).not.toBeNull();
  expect(live()?.parts.P1?.on).toBe(true);
});

test("steps given while an answer is awaited are done in order", async () => {
  const { session, ports } = desk("when-let");
  startOperating(session);
  doStep(session, press);
  doStep(session, letGo);
  for (let n = 0; n < 4; n++) await ports[0]?.answer();
  expect(ports[0]?.asked).toEqual([press, letGo]);
});

test("going back to an earlier step does the earlier ones again, and no others", async () => {
  const { session, ports, live } = desk();
  startOperating(session);
  for (const step of [press, letGo]) doStep(session, step);
  await settled();
  expect(live()?.parts.P1?.on).toBe(false);
  backTo(session, 1);
  await settled();
  expect(ports.at(-1)?.asked).toEqual([press]);
  expect(live()?.parts.P1?.on).toBe(true);
});

test("starting over is rest, and leaving and coming back is where one was", async () => {
  const { session, live, done } = desk();
  startOperating(session);
  doStep(session, press);
  await settled();
  stopOperating(session);
  expect(live()).toBeNull();
  startOperating(session);
  await settled();
  expect(live()?.parts.P1?.on).toBe(true);
  startOver(session);
  await settled();
  expect(done()).toEqual([]);
  expect(live()?.parts.P1?.on ?? false).toBe(false);
  startOver(session);
  await settled();
  expect(live()).not.toBeNull();
});

test("while something is timed, time passes by itself; waits in a row are one", async () => {
  const { session, clock, live, done } = desk();
  startOperating(session);
  doStep(session, press);
  await clock.pass(4100);
  expect(live()?.seconds).toBe(4);
  expect(done()).toEqual(["S1 to pressed", "Wait 4 s"]);
  // What passed since then comes before the next thing that is done.
  doStep(session, letGo);
  await settled();
  expect(live()?.seconds).toBeCloseTo(4.1);
  expect(done()).toEqual(["S1 to pressed", "Wait 4.1 s", "Let go of S1"]);
  await clock.pass(60_000);
  expect(live()?.seconds).toBeCloseTo(4.1);
});

test("with time held, only what is waited for by hand passes", async () => {
  const { session, clock, live } = desk();
  startOperating(session);
  showOperate(session, { timeRuns: false });
  doStep(session, press);
  await clock.pass(10_000);
  expect(live()?.seconds).toBe(0);
  doStep(session, { do: "wait", seconds: 3 });
  await settled();
  expect(live()?.seconds).toBe(3);
  showOperate(session, { timeRuns: true });
  await clock.pass(2000);
  expect(live()?.seconds).toBe(5);
});

test("two leads are measured between, again after every step", async () => {
  const { session } = desk();
  startOperating(session);
  placeLead(session, "red", "X1:1");
  await settled();
  expect(session.get().operate.leads.volts).toBe(12);
  doStep(session, { do: "wait", seconds: 2 });
  await settled();
  expect(session.get().operate.leads.volts).toBe(14);
  placeLead(session, "black", "X1:1");
  await settled();
  expect(session.get().operate.leads.volts).toBe(0);
});

function recorded(steps: Parameters<typeof doStep>[1][]) {
  const all = desk();
  all.session.edit("Record", (draft) => {
    const machine = draft.machines[0];
    if (machine) machine.recordings = [{ id: "recording1", name: "Beacon", steps }];
  });
  return all;
}

test("a recording is gone through step by step, each with what came of it", async () => {
  const { session, live, clock } = recorded([press, { do: "wait", seconds: 2 }, letGo]);
  beginReplay(session, "recording1");
  await clock.pass(10_000);
  expect(live()?.seconds).toBe(0);
  nextReplayStep(session);
  await clock.pass(10_000);
  expect(live()?.parts.P1?.on).toBe(true);
  // Time is the recording's own: none passes by itself.
  expect(live()?.seconds).toBe(0);
  replayTo(session, 3);
  await settled();
  expect(live()?.seconds).toBe(2);
  expect(session.get().operate.played[2]?.outcome?.events).toMatchObject([{ what: "off" }]);
  replayTo(session, 1);
  await settled();
  expect(live()?.parts.P1?.on).toBe(true);
});

test("a recording that runs through keeps its own time and comes to rest at its end", async () => {
  const { session, live, clock } = recorded([press, { do: "wait", seconds: 5 }, letGo]);
  beginReplay(session, "recording1");
  await settled();
  runReplay(session, true);
  await clock.pass(2700);
  // Something is timed every two seconds, and is seen when it happens.
  expect(live()?.seconds).toBe(0);
  await clock.pass(2000);
  expect(live()?.seconds).toBe(2);
  await clock.pass(20_000);
  expect(live()?.seconds).toBe(5);
  expect(session.get().operate.played).toHaveLength(3);
  expect(session.get().operate.replay?.runs).toBe(false);
});

test("a recording held in the middle of a wait has that wait behind it", async () => {
  const { session, live, clock } = recorded([press, { do: "wait", seconds: 6 }, letGo]);
  beginReplay(session, "recording1");
  await settled();
  runReplay(session, true);
  await clock.pass(5000);
  runReplay(session, false);
  await clock.pass(5000);
  expect(live()?.seconds).toBe(6);
  expect(session.get().operate.played).toHaveLength(2);
});

test("a recording made before an edit says which step can't be done any more", async () => {
  const { session } = recorded([{ do: "turn", switch: "S9", position: "on" }, press]);
  beginReplay(session, "recording1");
  replayTo(session, 2);
  await settled();
  const outcomes = session.get().operate.played.map(({ outcome }) => outcome?.refused);
  expect(outcomes).toEqual([expect.stringContaining("S9"), null]);
});

test("a hand on the machine ends the recording where it is", async () => {
  const { session, live } = recorded([press, letGo]);
  beginReplay(session, "recording1");
  nextReplayStep(session);
  doStep(session, { do: "wait", seconds: 1 });
  await settled();
  expect(session.get().operate.replay).toBeNull();
  expect(live()?.parts.P1?.on).toBe(true);
});

test("a circuit that can't be worked out says so, and starting over tries again", async () => {
  const session = createSession("job1", smallJob());
  let broken = true;
  const { open } = fakePlays();
  onTestFinished(
    keepOperating(
      session,
      (job, machine) => {
        const port = open(job, machine);
        return {
          ...port,
          step: (step) => (broken ? Promise.reject(new Error("no")) : port.step(step)),
        };
      },
      handClock(),
    ),
  );
  startOperating(session);
  doStep(session, press);
  await settled();
  expect(session.get().operate.failed).toContain("could not be worked out");
  broken = false;
  startOver(session);
  doStep(session, press);
  await settled();
  expect(session.get().operate.failed).toBeNull();
  expect(session.get().operate.live?.parts.P1?.on).toBe(true);
});

test("steps that gave way to a recording, to a restart or to earlier ones can be brought back", async () => {
  const { session, done, live } = desk();
  startOperating(session);
  doStep(session, press);
  await settled();
  keepRecording(session, "Press");
  doStep(session, letGo);
  doStep(session, press);
  await settled();
  const before = done();
  const id = session.get().job.machines[0]?.recordings?.at(-1)?.id ?? "";
  beginReplay(session, id);
  nextReplayStep(session);
  await settled();
  endReplay(session);
  backTo(session, 0);
  startOver(session);
  await settled();
  expect(done()).toEqual([]);
  bringBack(session);
  await settled();
  expect(done()).toEqual(before);
  expect(live()?.parts.P1?.on).toBe(true);
  // The next step by hand decides for what stands now.
  backTo(session, 1);
  doStep(session, letGo);
  expect(session.get().operate.setAside).toEqual([]);
});
