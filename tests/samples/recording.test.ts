import { expect, test } from "vitest";
import { createPlay } from "../../src/circuit/index.ts";
import { readSample } from "./sample-files.ts";

test("the demo's recording does what its page says: on at one press, low water lights, off at the next", () => {
  const job = readSample("sweeper/job.json");
  const recording = job.machines[0]?.recordings?.[0];
  if (!recording) throw new Error("no recording");
  const play = createPlay(job, "sweeper14");
  const seen = recording.steps.map((step) => {
    const { parts, refused } = play.step(step);
    expect(refused).toBeNull();
    const lit = ["M1", "P1", "P2"].filter((id) => parts[id]?.on);
    return [step.do === "turn" ? `${step.switch} ${step.position}` : step.do, lit.join(" ")];
  });
  expect(seen).toEqual([
    ["S1 run", ""],
    ["S2 pressed", "M1 P1"],
    ["wait", "M1 P1"],
    ["release", "M1 P1"],
    ["wait", "M1 P1"],
    ["S4 low", "M1 P1 P2"],
    ["S3 pressed", "P2"],
    ["release", "P2"],
    ["S4 full", ""],
    ["S1 off", ""],
  ]);
});
