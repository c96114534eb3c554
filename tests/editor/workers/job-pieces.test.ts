import { expect, test } from "vitest";
import { createTaker, handOver } from "../../../src/editor/workers/hand-over.ts";
import { cutJob } from "../../../src/editor/workers/job-pieces.ts";
import { smallJob } from "../../job/small-job.ts";
import { pluggedBigJob } from "../../support/plugged-big-job.ts";

const text = (value: unknown) => JSON.stringify(value);

/** What goes to another thread is copied on its way. */
async function handedOver(job: Parameters<typeof cutJob>[0]) {
  const taker = createTaker();
  await handOver(job, {
    takeOutline: (outline) => taker.takeOutline(structuredClone(outline)),
    takePiece: (piece) => taker.takePiece(structuredClone(piece)),
  });
  return taker.taken();
}

test.each([
  ["small", { ...smallJob(), "field of a newer version": { deep: [null] } }],
  ["large", pluggedBigJob(3000, 5, 3)],
])("a %s job arrives as it was, in the same order, and frozen", async (_name, job) => {
  const before = text(job);
  const arrived = await handedOver(job);
  expect(text(arrived)).toBe(before);
  expect(text(job)).toBe(before);
  const [part] = arrived.diagram.parts;
  for (const one of [arrived, arrived.diagram, arrived.diagram.parts, part, arrived.links])
    expect(Object.isFrozen(one)).toBe(true);
});

test("no piece of a large job is more than a small part of it", () => {
  const job = pluggedBigJob(3000, 5, 3);
  const whole = text(job).length;
  const { outline, pieces } = cutJob(job);
  expect(Math.max(text(outline).length, ...pieces.map((one) => text(one).length))).toBeLessThan(
    whole / 10,
  );
});
