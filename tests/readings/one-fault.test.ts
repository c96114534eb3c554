/** One real fault gives all the readings that it gives: `none` is never said of it. */
import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { solveCircuit } from "../../src/circuit/index.ts";
import type { Job, Reading, When } from "../../src/job/index.ts";
import { explainReading, oneFaultGives, settle } from "../../src/readings/index.ts";
import { faultyMachine } from "../support/faulty-machine.ts";
import { fourWays, measuredAs, ohms, volts } from "../support/four-way-plug.ts";
import { pinRefsOf } from "../support/random-machine.ts";
import { someDrawing } from "../support/some-drawing.ts";

/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20261129);

const METER = { is: "ohmic", ohms: 1e7, low: 1e7, high: 1e7 } as const;

/** The machine once its fuses have blown in one state or another. */
function blownOn(job: Job, states: readonly When[]): Job {
  let now = job;
  for (let round = 0; round < 3; round++) {
    const blown = states.flatMap((when) => solveCircuit(now, null, when).blown);
    if (blown.length === 0) break;
    const wires = now.diagram.wires.filter(
      ({ from, to }) => !blown.some((id) => from.startsWith(`${id}:`) || to.startsWith(`${id}:`)),
    );
    now = { ...now, diagram: { ...now.diagram, wires } };
  }
  return now;
}

test("whatever one fault shows in several places and states, one fault gives it", () => {
  let asked = 0;
  for (let n = 0; n < 60; n++) {
    const random = seededRandom(SEED + n);
    const { job, states } = someDrawing(random);
    settle(job);
    const faulty = faultyMachine(random, job);
    // what blows on a machine that has no fault is no fault's doing
    if (!faulty || blownOn(job, states) !== job) continue;
    const truth = blownOn(faulty.job, states);
    const odd: Reading[] = [];
    const probes = [...pinRefsOf(job), "battery+"];
    for (let k = 0; k < 30; k++) {
      const when = random.pick(states);
      const red = random.pick(probes);
      const black = random.chance(0.7) ? "chassis" : random.pick(probes);
      const shown = solveCircuit(truth, null, when, [{ red, black, acts: METER }]);
      const value = shown.volts(red, black);
      if (value === null) continue;
      const own: Reading = { id: `R${k}`, quantity: "volts", red, black, value, when };
      if (explainReading(job, "", own)) odd.push(own);
    }
    if (odd.length === 0) continue;
    asked++;
    expect(
      oneFaultGives(job, "", odd.slice(0, 4)),
      `seed ${SEED + n}: ${faulty.did}, ${JSON.stringify(odd.slice(0, 4))}`,
    ).not.toBe("none");
  }
  expect(asked).toBeGreaterThan(15);
}, 240_000);

const gives = (...readings: readonly Reading[]) =>
  oneFaultGives(measuredAs(readings), "M1", readings);

test("a feed that is gone and turns up at the lamp is no single fault", () => {
  expect(gives(volts("1", 0.01), volts("3", 25.1))).toBe("none");
  expect(gives(volts("2", 25.1), ohms("1", 0.2))).toBe("none");
});

test("each for itself it is one", () => {
  expect(gives(volts("1", 0.01))).toBe("one");
  expect(gives(volts("3", 25.1))).toBe("one");
  // the lamp's wire rubs through on the feed's
  expect(gives(volts("3", 25.1), ohms("1", 8))).toBe("one");
});

test("an untraced end or a strange module on the line is no proof", () => {
  const circuit = fourWays().part("offpage", "PE1", { label: "to sheet 9" } as object);
  circuit.wire("A1:3 PE1:1");
  const readings = [volts("3", 25.1)];
  expect(oneFaultGives(measuredAs(readings, {}, circuit), "M1", readings)).toBe("untold");
});
