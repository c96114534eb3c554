import fc from "fast-check";
import { expect, test } from "vitest";
import { factor, solveCircuit } from "../../src/circuit/index.ts";
import { denseVolts } from "../support/dense-solver.ts";
import { jobOf, randomNetwork } from "../support/resistor-network.ts";
import "../support/seed.ts";

const seeds = fc.integer({ min: 0, max: 2 ** 31 });
const close = (found: number, wanted: number) =>
  Math.abs(found - wanted) <= 1e-5 * (1 + Math.abs(wanted));

test("any network of batteries and resistors comes out as by Gaussian elimination", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const network = randomNetwork(seed);
      const wanted = denseVolts(network.nodeCount, network.branches);
      const solved = solveCircuit(jobOf(network), null, {});
      for (let node = 1; node < network.nodeCount; node++) {
        const found = solved.volts(`N${node}:1`, "N0:1");
        expect(found).not.toBeNull();
        expect(close(found ?? 0, wanted[node] ?? 0)).toBe(true);
      }
    }),
    { numRuns: 300 },
  );
});

test("what flows into a node flows out of it", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const network = randomNetwork(seed);
      const flows = new Map(
        solveCircuit(jobOf(network), null, {}).flows.map((flow) => [flow.part, flow.amps]),
      );
      const sums = new Array<number>(network.nodeCount).fill(0);
      let most = 0;
      network.branches.forEach(({ a, b }, index) => {
        const amps = flows.get(`B${index}`) ?? Number.NaN;
        sums[a] = (sums[a] ?? 0) - amps;
        sums[b] = (sums[b] ?? 0) + amps;
        most = Math.max(most, Math.abs(amps));
      });
      for (const sum of sums) expect(Math.abs(sum)).toBeLessThanOrEqual(1e-8 * (1 + most));
    }),
    { numRuns: 200 },
  );
});

test("the voltages of several sources are the sums of what each gives alone", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const network = randomNetwork(seed);
      const conductors = network.branches.map(({ a, b, ohms }) => ({ a, b, siemens: 1 / ohms }));
      const factored = factor(network.nodeCount, conductors, [0]);
      const total = new Float64Array(network.nodeCount);
      const sum = new Float64Array(network.nodeCount);
      for (const { a, b, ohms, volts } of network.branches) {
        const alone = new Float64Array(network.nodeCount);
        for (const injected of [alone, total]) {
          injected[a] = (injected[a] ?? 0) + volts / ohms;
          injected[b] = (injected[b] ?? 0) - volts / ohms;
        }
        factored.solve(alone).forEach((value, node) => {
          sum[node] = (sum[node] ?? 0) + value;
        });
      }
      factored.solve(total).forEach((value, node) => {
        expect(close(sum[node] ?? 0, value)).toBe(true);
      });
    }),
    { numRuns: 200 },
  );
});

test("a piece that hangs on nothing is a piece of its own, with no number made up for it", () => {
  const { piece } = factor(5, [
    { a: 0, b: 1, siemens: 1 },
    { a: 2, b: 3, siemens: 1 },
  ]);
  expect(piece[0]).toBe(piece[1]);
  expect(piece[2]).toBe(piece[3]);
  expect(new Set([piece[0], piece[2], piece[4]]).size).toBe(3);
});

test("a microohm joint beside a 10 megohm meter costs neither its digits", () => {
  // node 1 at 24 V; a chain of two stiff joints ends in a divider of two meters
  const factored = factor(
    5,
    [
      { a: 0, b: 1, siemens: 1e6 },
      { a: 1, b: 2, siemens: 1e6 },
      { a: 2, b: 3, siemens: 1e6 },
      { a: 3, b: 4, siemens: 1e-7 },
      { a: 4, b: 0, siemens: 1e-7 },
    ],
    [0],
  );
  const volts = factored.solve(Float64Array.from([-24e6, 24e6, 0, 0, 0]));
  expect(volts[4]).toBeCloseTo(12, 9);
});

test("twenty thousand nodes are solved in a moment", () => {
  const side = 141;
  const conductors = [];
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      const node = y * side + x;
      // a harness is far more tree than grid: few cross links
      if (x + 1 < side) conductors.push({ a: node, b: node + 1, siemens: 1 });
      if (y + 1 < side && x % 20 === 0) conductors.push({ a: node, b: node + side, siemens: 1 });
    }
  }
  // the processor's own time: other work on the machine must not fail this
  const before = process.cpuUsage();
  const factored = factor(side * side, conductors, [0]);
  const injected = new Float64Array(side * side);
  injected[side * side - 1] = 1;
  injected[0] = -1;
  const volts = factored.solve(injected);
  expect(process.cpuUsage(before).user / 1e6).toBeLessThan(3);
  const left = Float64Array.from(injected);
  for (const { a, b, siemens } of conductors) {
    const amps = siemens * ((volts[a] ?? 0) - (volts[b] ?? 0));
    left[a] = (left[a] ?? 0) - amps;
    left[b] = (left[b] ?? 0) + amps;
  }
  expect(Math.max(...left.map(Math.abs))).toBeLessThan(1e-9);
});
