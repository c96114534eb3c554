import fc from "fast-check";
import { expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { planNetFlows } from "../../../src/circuit/play/net-flows.ts";
import { denseVolts } from "../../support/dense-solver.ts";
import "../../support/seed.ts";

const seeds = fc.integer({ min: 0, max: 2 ** 31 });

/** Points in some connected groups, joined by a tree each and some lines more, and what leaves them. */
function randomNets(seed: number) {
  const random = seededRandom(seed);
  const a: number[] = [];
  const b: number[] = [];
  const leaving: number[] = [];
  for (let groups = 1 + random.below(3); groups > 0; groups--) {
    const first = leaving.length;
    const count = 1 + random.below(12);
    for (let n = 0; n < count; n++) {
      leaving.push(random.below(200) / 10 - 10);
      if (n === 0) continue;
      const other = first + random.below(n);
      const turned = random.chance(0.5);
      a.push(turned ? first + n : other);
      b.push(turned ? other : first + n);
    }
    for (let more = random.below(4); more > 0; more--) {
      a.push(first + random.below(count));
      b.push(first + random.below(count));
    }
    const own = leaving.slice(first);
    const last = own.length - 1;
    leaving[first + last] = -own.slice(0, last).reduce((sum, one) => sum + one, 0);
  }
  return { a: Int32Array.from(a), b: Int32Array.from(b), leaving: Float64Array.from(leaving) };
}

test("at every point the lines bring what leaves it", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const { a, b, leaving } = randomNets(seed);
      const amps = planNetFlows(leaving.length, a, b)(leaving);
      const brought = new Float64Array(leaving.length);
      amps.forEach((flow, line) => {
        brought[a[line] as number] = (brought[a[line] as number] as number) - flow;
        brought[b[line] as number] = (brought[b[line] as number] as number) + flow;
      });
      brought.forEach((own, point) => {
        expect(own).toBeCloseTo(leaving[point] as number, 7);
      });
    }),
    { numRuns: 400 },
  );
});

test("side by side, lines share as equal resistances do", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const { a, b, leaving } = randomNets(seed);
      const amps = planNetFlows(leaving.length, a, b)(leaving);
      // each group has its own reference: potentials differ by what the group's first point has
      const volts = groupVolts(leaving, a, b);
      amps.forEach((flow, line) => {
        const [from, to] = [a[line] as number, b[line] as number];
        expect(flow).toBeCloseTo((volts[from] as number) - (volts[to] as number), 4);
      });
    }),
    { numRuns: 200 },
  );
});

/** By Gaussian elimination: every line 1 Ω, each group tied to point 0 of all by a resistor. */
function groupVolts(leaving: Float64Array, a: Int32Array, b: Int32Array): readonly number[] {
  const group = Array.from(leaving, (_, point) => point);
  for (let changed = true; changed; ) {
    changed = false;
    a.forEach((from, line) => {
      const to = b[line] as number;
      const least = Math.min(group[from] as number, group[to] as number);
      if (group[from] === least && group[to] === least) return;
      group[from] = least;
      group[to] = least;
      changed = true;
    });
  }
  const branches = [
    ...Array.from(a, (from, line) => ({ a: from, b: b[line] as number, ohms: 1, volts: 0 })),
    ...[...new Set(group)]
      .filter((one) => one !== 0)
      .map((one) => ({ a: one, b: 0, ohms: 1, volts: 0 })),
    // what leaves a point is pushed out of it by a source too high to notice the rest
    ...Array.from(leaving, (amps, point) => ({
      a: point,
      b: 0,
      ohms: 1e9,
      volts: -amps * 1e9,
    })).filter((branch) => branch.a !== 0),
  ];
  return denseVolts(leaving.length, branches);
}

test("a ring of a thousand lines is solved too", () => {
  const count = 1000;
  const a = Int32Array.from({ length: count }, (_, point) => point);
  const b = a.map((point) => (point + 1) % count);
  const leaving = new Float64Array(count);
  leaving[0] = -8;
  leaving[250] = 8;
  const amps = planNetFlows(count, a, b)(leaving);
  expect(amps[100]).toBeCloseTo(6, 9);
  expect(amps[600]).toBeCloseTo(-2, 9);
});

test("a line from a point to itself carries nothing", () => {
  const amps = planNetFlows(2, Int32Array.of(0, 0), Int32Array.of(0, 1))(Float64Array.of(-3, 3));
  expect([...amps]).toEqual([0, 3]);
});
