import fc from "fast-check";
import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { influenceOf, setUp } from "../../src/circuit/index.ts";
import { randomCircuit } from "../support/random-circuit.ts";
import { slowInfluence } from "../support/slow-influence.ts";
import "../support/seed.ts";

test("following ripples finds just the unknowns that whole solutions find, for every pair of nodes", () => {
  let felt = 0;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
      const random = seededRandom(seed);
      const job = randomCircuit(random);
      // half of the wires are resistors of their own, so that there is much to tell apart
      for (const wire of job.diagram.wires) {
        if (random.chance(0.5)) Object.assign(wire, { mm2: 1, metres: 1 + random.below(400) });
      }
      const switches: Record<string, string> = {};
      for (const part of job.diagram.parts) {
        if (part.kind === "switch" && random.chance(0.6))
          switches[part.id] = random.pick(part.positions);
      }
      const bench = setUp(job, null, { switches });
      const { point, unknowns } = bench.doubts;
      const influence = influenceOf(point, unknowns);
      const slow = slowInfluence(bench.wiring.branches, point, unknowns);
      for (const piece of new Set(influence.piece)) {
        const reference = influence.referenceOf(piece);
        const unsure = influence.unsure(piece);
        for (let node = 0; node < bench.wiring.nodeCount; node++) {
          if (influence.piece[node] !== piece) continue;
          const wanted = slow(node, reference).length > 0;
          expect(unsure.nodes.has(node)).toBe(wanted);
        }
      }
      for (let red = 0; red < bench.wiring.nodeCount; red++) {
        for (let black = red + 1; black < bench.wiring.nodeCount; black++) {
          const found = influence.between(red, black);
          const wanted = slow(red, black);
          felt += wanted.length;
          expect(new Set(found)).toEqual(new Set(wanted));
        }
      }
    }),
    { numRuns: 50 },
  );
  expect(felt).toBeGreaterThan(300);
});
