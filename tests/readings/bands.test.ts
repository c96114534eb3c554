import fc from "fast-check";
import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import type { Job, When } from "../../src/job/index.ts";
import { predict, type ReadingSetup } from "../../src/readings/index.ts";
import { type Draw, healthyMachine, loadedMachine } from "../support/healthy-machine.ts";

const seed = fc.integer({ min: 0, max: 2 ** 31 });
const worked: When = { switches: { S1: "worked" } };

/** A reading of the kinds that a mechanic takes, at points and under conditions of the machine. */
function someReading(
  random: Random,
  { points, loads }: ReturnType<typeof loadedMachine>,
): ReadingSetup {
  const red = random.pick(points);
  switch (random.below(6)) {
    case 0:
    case 1:
      return { quantity: "volts", red, black: "chassis", when: worked };
    case 2:
      return { quantity: "volts", red, black: "chassis", when: worked, with: "test-lamp" };
    case 3:
      return { quantity: "drop", red: "battery+", black: red, when: worked };
    case 4:
      return { quantity: "amps", red: "F1:1", black: "F1:2", when: { ...worked, removed: ["F1"] } };
    default: {
      const load = random.pick(loads);
      const [a, b] = load.startsWith("K") ? ["86", "85"] : ["1", "2"];
      const removed = random.chance(0.5) ? ["G1"] : ["G1", load];
      return { quantity: "ohms", red: `${load}:${a}`, black: `${load}:${b}`, when: { removed } };
    }
  }
}

const shown = (job: Job, setup: ReadingSetup, draw: Draw): number | null => {
  const machine = healthyMachine(job, draw, setup.quantity === "ohms");
  const { predicted } = predict(machine, "machine1", setup);
  return typeof predicted === "number" ? predicted : null;
};

/** The same draw for the same name, whatever is asked first. */
function remembered(draw: () => number): Draw {
  const known = new Map<string, number>();
  return (name) => {
    const own = known.get(name) ?? draw();
    known.set(name, own);
    return own;
  };
}

test("no healthy machine within its limits ever reads outside the band", () => {
  let compared = 0;
  fc.assert(
    fc.property(seed, (from) => {
      const random = seededRandom(from);
      const machine = loadedMachine(random);
      const setup = someReading(random, machine);
      const band = predict(machine.job, "machine1", setup);
      if (typeof band.predicted !== "number") return;
      for (let n = 0; n < 12; n++) {
        // half of them with every part at one of its limits
        const draw = remembered(n % 2 === 0 ? random.next : () => random.below(2));
        const value = shown(machine.job, setup, draw);
        if (value === null) continue;
        compared++;
        expect(value, JSON.stringify(setup)).toBeGreaterThanOrEqual((band.low ?? 0) - 1e-9);
        expect(value, JSON.stringify(setup)).toBeLessThanOrEqual((band.high ?? 0) + 1e-9);
      }
    }),
    { numRuns: 150 },
  );
  expect(compared).toBeGreaterThan(1000);
});

/** The meter's own error and the leads, which no drawn machine has: volts, ohms or amps. */
const METER = { volts: [0.01, 0.05], drop: [0.01, 0.02], amps: [0.015, 0.02], ohms: [0.01, 0.8] };

/** Climbs from limit to limit, one part at a time, to the most (or least) that a machine can show. */
function extreme(job: Job, setup: ReadingSetup, sign: 1 | -1, random: Random): number {
  const corner = new Map<string, number>();
  const draw: Draw = (name) => {
    const own = corner.get(name) ?? random.below(2);
    corner.set(name, own);
    return own;
  };
  let best = shown(job, setup, draw) ?? Number.NaN;
  for (let better = true; better; ) {
    better = false;
    for (const name of [...corner.keys()]) {
      const own = corner.get(name) ?? 0;
      corner.set(name, 1 - own);
      const value = shown(job, setup, draw) ?? Number.NaN;
      if (sign * value > sign * best + 1e-12) {
        best = value;
        better = true;
      } else corner.set(name, own);
    }
  }
  return best;
}

test("the band is no wider than the machines that could be, the meter's error apart", () => {
  fc.assert(
    fc.property(seed, (from) => {
      const random = seededRandom(from);
      const machine = loadedMachine(random);
      const setup = someReading(random, machine);
      // the lamp itself and the ammeter's shunt vary too, and no job can say how
      if (setup.with === "test-lamp" || setup.quantity === "amps") return;
      const band = predict(machine.job, "machine1", setup);
      if (typeof band.predicted !== "number") return;
      const low = extreme(machine.job, setup, -1, random);
      const high = extreme(machine.job, setup, 1, random);
      const [share, digits] = METER[setup.quantity] as [number, number];
      const size = Math.max(Math.abs(low), Math.abs(high));
      // climbing may end below the very top, by more where diodes turn on the way
      const slack = share * size + digits + 0.05 * size + 0.05;
      expect(band.high ?? 0, JSON.stringify(setup)).toBeLessThanOrEqual(high + slack);
      expect(band.low ?? 0, JSON.stringify(setup)).toBeGreaterThanOrEqual(low - slack);
    }),
    { numRuns: 25 },
  );
}, 60_000);
