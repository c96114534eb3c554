import { readFileSync } from "node:fs";
import { expect, onTestFinished, test } from "vitest";
import { createPlay } from "../../../src/circuit/index.ts";
import type { Job } from "../../../src/job/index.ts";
import {
  createSession,
  doStep,
  keepOperating,
  keepRecording,
  portOf,
  recordingsOf,
  startOperating,
  stepWords,
} from "../../../src/session/index.ts";
import { handClock } from "../support/fake-play.ts";

/** The demo with its low-water lamp flashing, half a second on and half a second off. */
function flashing(): Job {
  const job: Job = JSON.parse(readFileSync("sample-data/sweeper/job.json", "utf8"));
  const module = job.diagram.parts.find((part) => part.id === "A1");
  if (module?.kind !== "module" || !module.behaviour) throw new Error("no module");
  for (const path of module.behaviour.paths) {
    if (path.between[1] === "6") Object.assign(path, { does: "flash", seconds: 1 });
  }
  return job;
}

function operated() {
  const session = createSession("timed", flashing());
  const clock = handClock();
  onTestFinished(
    keepOperating(session, (job, machine) => portOf(() => createPlay(job, machine)), clock),
  );
  startOperating(session);
  const operate = () => session.get().operate;
  const lit = () => operate().live?.parts.P2?.on ?? false;
  return { session, clock, operate, lit };
}

test("a lamp that flashes goes on and off by itself, in time with the clock", async () => {
  const { session, clock, operate, lit } = operated();
  doStep(session, { do: "turn", switch: "S1", position: "run" });
  doStep(session, { do: "turn", switch: "S4", position: "low" });
  const seen = new Set<boolean>();
  for (let n = 0; n < 20; n++) {
    await clock.pass(250);
    seen.add(lit());
  }
  expect(seen).toEqual(new Set([true, false]));
  expect(operate().live?.seconds).toBeGreaterThan(4);
  expect(operate().live?.seconds).toBeLessThanOrEqual(5);
  // However often it flashed, it is one wait.
  expect(operate().played.map(({ step }) => step.do)).toEqual(["turn", "turn", "wait"]);
});

test("when the cause is gone time stands again, and what is kept has the time that passed", async () => {
  const { session, clock, operate, lit } = operated();
  doStep(session, { do: "turn", switch: "S1", position: "run" });
  doStep(session, { do: "turn", switch: "S4", position: "low" });
  await clock.pass(2600);
  doStep(session, { do: "turn", switch: "S4", position: "full" });
  await clock.pass(5000);
  expect(lit()).toBe(false);
  expect(operate().live?.nextIn).toBeNull();
  const { seconds } = operate().live ?? { seconds: Number.NaN };
  expect(seconds).toBeCloseTo(2.6, 2);
  keepRecording(session, "Low water");
  const kept = recordingsOf(session.get().job, session.get().machine).at(-1);
  expect(kept?.steps.map(stepWords)).toEqual([
    "S1 to run",
    "S4 to low",
    "Wait 2.6 s",
    "S4 to full",
  ]);
});
