import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { PlayEvent } from "../../../src/circuit/index.ts";
import type { Job, Step } from "../../../src/job/index.ts";
import { newsOf, operablesOf, type PlayedStep } from "../../../src/session/index.ts";

const job: Job = JSON.parse(readFileSync("sample-data/sweeper/job.json", "utf8"));
const parts = operablesOf(job, job.machines[0]?.id ?? "").byId;
const step = (of: Step, ...events: PlayEvent[]): PlayedStep => ({
  step: of,
  outcome: { seconds: 0, events, refused: null },
});
const lamp: PlayEvent = { seconds: 0, what: "on", part: "P1" };
const relay: PlayEvent = { seconds: 0, what: "pulled-in", part: "K2" };
const motor: PlayEvent = { seconds: 0, what: "on", part: "M1" };
const blew: PlayEvent = { seconds: 0, what: "blew", part: "F4", amps: 12.3, drawnBy: ["M1"] };
const press: Step = { do: "turn", switch: "S2", position: "pressed" };
const letGo: Step = { do: "release", switch: "S2" };

test("what is not told is counted, and a blown fuse and a motor are never among it", () => {
  const { says, more } = newsOf([step(press, lamp, relay, motor, blew)], parts, 2, false);
  expect(says).toMatch(/^S2 to pressed: M1.*: running; F4.* blows at 12\.30? A, drawn by M1\.$/);
  expect(more).toBe(2);
});

test("a tapped button is told with what its press did", () => {
  const { says } = newsOf([step(press, motor), step(letGo)], parts, 4, false);
  expect(says).toMatch(/^S2 to pressed: M1.*: running\. Let go of S2\.$/);
});

test("never firmer than the drawing", () => {
  expect(newsOf([step(letGo)], parts, 4, false)).toEqual({
    says: "Let go of S2: nothing else, as far as the drawing tells.",
    more: 0,
  });
  expect(newsOf([], parts, 4, false).says).toMatch(/at rest/);
});

test("what is shown is of before the last step until that is worked out, and is told so", () => {
  const waits: PlayedStep = { step: letGo, outcome: null };
  expect(newsOf([waits], parts, 4, false)).toEqual({
    says: "Let go of S2: working it out…",
    more: 0,
  });
  const { says } = newsOf([step(press, motor), waits], parts, 4, false);
  expect(says).toMatch(/^S2 to pressed: M1.*: running\. Let go of S2: working it out…$/);
  expect(newsOf([waits], parts, 4, true).says).toBe("Let go of S2.");
});
