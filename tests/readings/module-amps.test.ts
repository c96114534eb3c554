import { expect, test } from "vitest";
import { predict } from "../../src/readings/index.ts";
import { withBattery } from "../support/circuit-builder.ts";

/** A module with a fused feed, a ground wire of 2 m and 2.5 mm², and lamps that it grounds. */
function dropBand(lamps: number) {
  const circuit = withBattery(12)
    .part("fuse", "F1", { amps: 30 })
    .part("ground", "GND2")
    .module("A1", { "1": null, "2": null, "3": null })
    .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND2:1");
  for (let n = 1; n <= lamps; n++)
    circuit.part("lamp", `P${n}`, { watts: 55 }).wire(`F1:2 P${n}:1`, `P${n}:2 A1:3`);
  for (const wire of circuit.job.diagram.wires) Object.assign(wire, { mm2: 2.5, metres: 2 });
  const when = {};
  const setup = { quantity: "drop", red: "A1:2", black: "chassis", when } as const;
  return predict(circuit.job, "machine1", setup);
}

/** Ω of 2 m of 2.5 mm²: 7.98 Ω/km, IEC 60228 class 5. */
const OHMS = 2 * 0.00798;

test("what a module may have switched on runs through its ground wire", () => {
  const drop = (3 * 55 * OHMS) / 12;
  expect(drop).toBeCloseTo(0.22, 2);
  const band = dropBand(3);
  expect(band.high).toBeGreaterThan(drop);
  // and not any amount: a joint of 0.1 Ω shows
  expect(band.high).toBeLessThan((3 * 55 * (OHMS + 0.1)) / 12);
});

test("a module that drives nothing draws little", () => {
  expect(dropBand(0).high).toBeLessThan(0.2);
});
