/** The paper jobs' own solver against plain elimination on the full matrix. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { denseVolts } from "../support/dense-solver.ts";
import { lumped, meshVolts } from "../support/paper-jobs/star-mesh.ts";

/** A tree of resistors that hangs on node 0, with a few rings and sources. */
function network(seed: number) {
  const random = seededRandom(seed);
  const count = 3 + random.below(20);
  const ohms = () => random.pick([0.01, 0.5, 12, 330, 4700, 1e6]);
  const branches = Array.from({ length: count - 1 }, (_, index) => ({
    a: index + 1,
    b: random.below(index + 1),
    ohms: ohms(),
    volts: random.chance(0.2) ? 12 : 0,
  }));
  for (let n = random.below(count); n > 0; n--)
    branches.push({ a: random.below(count), b: random.below(count), ohms: ohms(), volts: 0 });
  return { random, count, branches: branches.filter(({ a, b }) => a !== b) };
}

const seeds = fc.integer({ min: 0, max: 2 ** 31 });

test("every node has the volts that the full matrix gives it", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const { count, branches } = network(seed);
      const volts = meshVolts(count, branches);
      denseVolts(count, branches).forEach((expected, node) => {
        expect(volts[node]).toBeCloseTo(expected, 4);
      });
    }),
  );
});

test("lumped together, what was kept has the same volts", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const { random, count, branches } = network(seed);
      const kept = [random.below(count), random.below(count)];
      const small = lumped(count, branches, new Set(kept));
      const volts = meshVolts(small.count, small.branches);
      const all = meshVolts(count, branches);
      for (const node of kept) expect(volts[small.at(node)]).toBeCloseTo(all[node] ?? 0, 4);
    }),
  );
});
