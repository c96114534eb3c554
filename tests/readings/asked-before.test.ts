import fc from "fast-check";
import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import type { When } from "../../src/job/index.ts";
import { predict, type ReadingSetup, settle } from "../../src/readings/index.ts";
import { loadedMachine } from "../support/healthy-machine.ts";
import "../support/seed.ts";

const WHENS: readonly When[] = [{}, { switches: { S1: "worked" } }, { removed: ["G1"] }];

function someSetup(random: Random, points: readonly string[]): ReadingSetup {
  const when = random.pick(WHENS);
  const quantity = when.removed ? "ohms" : random.pick(["volts", "volts", "drop"] as const);
  return {
    quantity,
    red: random.pick(points),
    black: quantity === "volts" ? "chassis" : random.pick(points),
    when,
    ...(quantity === "volts" && random.chance(0.2) ? { with: "test-lamp" as const } : {}),
  };
}

test("a prediction and its band are the same, to the last bit, whatever was asked before", () => {
  let compared = 0;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
      const random = seededRandom(seed);
      const { job, points } = loadedMachine(random);
      const asked = settle(structuredClone(job));
      for (let n = 0; n < 25; n++) {
        const setup = someSetup(random, points);
        const fresh = predict(structuredClone(job), "machine1", setup);
        if (fresh.low !== null) compared++;
        expect(predict(asked, "machine1", setup), JSON.stringify(setup)).toEqual(fresh);
      }
    }),
    { numRuns: 30 },
  );
  expect(compared).toBeGreaterThan(150);
});
