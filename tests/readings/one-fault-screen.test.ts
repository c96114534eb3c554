/** Which faults need no trying: held against trying every one of them, as slow as that is. */
import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import { solveCircuit } from "../../src/circuit/index.ts";
import type { Job, Reading, When } from "../../src/job/index.ts";
import { tryEach } from "../../src/readings/explain/one-fault.ts";
import { type Screened, screenOf } from "../../src/readings/explain/screen.ts";
import type { Screen } from "../../src/readings/explain/single-faults.ts";
import { explainReading, settle } from "../../src/readings/index.ts";
import { faultyMachine } from "../support/faulty-machine.ts";
import { pinRefsOf } from "../support/random-machine.ts";
import { someDrawing } from "../support/some-drawing.ts";

/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20261201);

const METER = { is: "ohmic", ohms: 1e7, low: 1e7, high: 1e7 } as const;

/** Lets everything pass. */
const everything = (_: readonly Screened[]): Screen => ({
  opens: () => true,
  opensIn: () => true,
  across: () => true,
  sticks: () => true,
  touching: (places) =>
    places.flatMap((_place, a) => places.slice(a + 1).map((_other, b) => [a, a + 1 + b] as const)),
});

/** Odd readings of a machine with a fault in it, some of them noted at the wrong place. */
function oddReadings(random: Random, job: Job, states: readonly When[]): readonly Reading[] {
  const faulty = faultyMachine(random, job);
  const probes = [...pinRefsOf(job), "battery+"];
  const odd: Reading[] = [];
  for (let k = 0; k < 40 && odd.length < 3; k++) {
    const when = random.pick(states);
    const red = random.pick(probes);
    const black = random.chance(0.7) ? "chassis" : random.pick(probes);
    const shown = solveCircuit(faulty?.job ?? job, null, when, [{ red, black, acts: METER }]);
    const value = shown.volts(red, black);
    if (value === null) continue;
    if (random.chance(0.25)) {
      const dead = { ...when, removed: ["G1"] };
      const ohms = random.pick([0.3, 4, 60, 900, "OL"] as const);
      const own: Reading = { id: `R${k}`, quantity: "ohms", red, black, value: ohms, when: dead };
      if (red !== black && explainReading(job, "", own)) odd.push(own);
      continue;
    }
    const noted = random.chance(0.4) ? random.pick(probes) : red;
    const own: Reading = { id: `R${k}`, quantity: "volts", red: noted, black, value, when };
    if (noted !== black && explainReading(job, "", own)) odd.push(own);
  }
  return odd;
}

test("a fault that is left out gives none of the readings: the same answer as when all are tried", () => {
  const told = { one: 0, none: 0, untold: 0 };
  for (let n = 0; n < 50; n++) {
    const random = seededRandom(SEED + n);
    const { job, states } = someDrawing(random);
    settle(job);
    const odd = oddReadings(random, job, states);
    if (odd.length === 0) continue;
    const slow = tryEach(job, "", odd, everything);
    if (slow === "untold") continue;
    const fast = tryEach(job, "", odd, screenOf);
    told[fast]++;
    // that too much matters to say anything is no answer, and no wrong one
    if (fast !== "untold") expect(fast, `seed ${SEED + n}: ${JSON.stringify(odd)}`).toBe(slow);
  }
  expect(told.none).toBeGreaterThan(5);
  expect(told.one).toBeGreaterThan(4);
  expect(told.untold).toBeLessThan(3);
}, 240_000);
