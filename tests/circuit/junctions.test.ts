import fc from "fast-check";
import { expect, test } from "vitest";
import { solveCircuit } from "../../src/circuit/index.ts";
import { CircuitBuilder } from "../support/circuit-builder.ts";
import { denseVolts } from "../support/dense-solver.ts";
import "../support/seed.ts";

/** Two ends each: 0 is ground, 1 what the switch feeds, the rest are splices. */
type Ends = readonly [from: number, to: number];

const VOLTS = 24;
const BATTERY_OHMS = 0.5;
/** Of the solver's law for a silicon diode: 0.7 V (Kuphaldt), then a milliohm. */
const [OWN_VOLTS, OWN_OHMS] = [0.7, 1e-3];
/** Ω from every point to ground in the oracle, so that it need not know what floats. */
const LEAK = 1e9;

/**
 * Tries every choice of which diodes conduct until one agrees with itself: each that conducts does
 * so forwards, and none of the others lacks anything. Volts by point.
 */
function byTrying(
  points: number,
  resistors: readonly Ends[],
  ohms: readonly number[],
  diodes: readonly Ends[],
) {
  const fixed = [
    { a: 1, b: 0, ohms: BATTERY_OHMS, volts: VOLTS },
    ...resistors.map(([a, b], n) => ({ a, b, ohms: ohms[n] as number, volts: 0 })),
    ...Array.from({ length: points - 1 }, (_, n) => ({ a: n + 1, b: 0, ohms: LEAK, volts: 0 })),
  ];
  for (let choice = 0; choice < 2 ** diodes.length; choice++) {
    const isOn = (n: number) => ((choice >> n) & 1) === 1;
    const on = diodes.flatMap(([a, b], n) =>
      isOn(n) ? [{ a, b, ohms: OWN_OHMS, volts: OWN_VOLTS }] : [],
    );
    const volts = denseVolts(points, [...fixed, ...on]);
    const agrees = diodes.every(([a, b], n) => {
      const beyond = (volts[a] as number) - (volts[b] as number) - OWN_VOLTS;
      return isOn(n) ? beyond > -1e-7 : beyond < 1e-6;
    });
    if (agrees) return volts;
  }
  return null;
}

const ends = (points: number, least: number, most: number) =>
  fc.array(
    fc.tuple(fc.nat(points - 1), fc.nat(points - 1)).filter(([a, b]) => a !== b),
    { minLength: least, maxLength: most },
  );

test("diodes that a switch feeds conduct as the only choice that agrees with itself", () => {
  let compared = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 4, max: 7 }).chain((points) =>
        fc.record({
          points: fc.constant(points),
          resistors: ends(points, 1, 4),
          ohms: fc.array(fc.constantFrom(10, 100, 1000), { minLength: 4, maxLength: 4 }),
          diodes: ends(points, 2, 7),
        }),
      ),
      ({ points, resistors, ohms, diodes }) => {
        const wanted = byTrying(points, resistors, ohms, diodes);
        if (wanted === null) return;
        const circuit = new CircuitBuilder(VOLTS)
          .part("battery", "G1", { volts: VOLTS, ohms: BATTERY_OHMS })
          .part("ground", "GND1")
          .contact("S1", "operator")
          .wire("G1:- GND1:1", "G1:+ S1:1");
        const at = (point: number) =>
          point === 0 ? "GND1:1" : point === 1 ? "S1:2" : `XS${point}:1`;
        for (let point = 2; point < points; point++) circuit.part("splice", `XS${point}`);
        resistors.forEach(([a, b], n) => {
          circuit.part("resistor", `R${n + 1}`, { ohms: ohms[n] as number });
          circuit.wire(`${at(a)} R${n + 1}:1`, `R${n + 1}:2 ${at(b)}`);
        });
        diodes.forEach(([a, b], n) => {
          circuit.part("diode", `V${n + 1}`).wire(`${at(a)} V${n + 1}:A`, `V${n + 1}:K ${at(b)}`);
        });
        const solved = solveCircuit(circuit.job, "machine1", { switches: { S1: "worked" } });
        for (let point = 2; point < points; point++) {
          const volts = solved.volts(at(point), "chassis");
          if (volts === null) continue;
          compared++;
          // ideal joints are a millionth of an ohm, the oracle leaks
          const slack = 0.02 + 1e-3 * Math.abs(wanted[point] as number);
          expect(Math.abs(volts - (wanted[point] as number))).toBeLessThan(slack);
        }
      },
    ),
    { numRuns: 400 },
  );
  expect(compared).toBeGreaterThan(400);
});
