import { expect, test } from "vitest";
import { setUp, solveCircuit, wireOhms } from "../../src/circuit/index.ts";
import {
  gaugeArea,
  gaugeDiameter,
  ohmsPerMetreOfArea,
  ohmsPerMetreOfGauge,
} from "../../src/standards/index.ts";
import { CircuitBuilder } from "../support/circuit-builder.ts";
import { referenceRows } from "./rows.ts";

const rows = referenceRows("conductors.csv") ?? [];

test.skipIf(rows.length === 0)(
  "flexible conductors are as IEC 60228 class 5, table 3, has them",
  () => {
    const table = rows.filter(({ table: name }) => name?.startsWith("IEC 60228"));
    expect(table.length).toBe(10);
    for (const { size = "", value1 } of table) {
      expect(ohmsPerMetreOfArea(Number.parseFloat(size)) * 1000).toBeCloseTo(Number(value1), 9);
    }
  },
);

test.skipIf(rows.length === 0)("gauge numbers are as computed after ASTM B258", () => {
  const table = rows.filter(({ table: name }) => name?.startsWith("AWG"));
  expect(table.length).toBe(9);
  for (const { size, value1, value2, value3 } of table) {
    const awg = Number(size);
    expect(gaugeDiameter(awg)).toBeCloseTo(Number(value1), 3);
    expect(gaugeArea(awg) / Number(value2)).toBeCloseTo(1, 3);
    expect((ohmsPerMetreOfGauge(awg) * 1000) / Number(value3)).toBeCloseTo(1, 3);
  }
});

test("ten metres of 1 mm² are 0.195 Ω, of AWG 18 0.2095 Ω, and of a size nobody knows unknown", () => {
  // IEC 60228 class 5: 19.5 Ω/km; ASTM B258: 20.95 Ω/km
  const wire = { id: "W1", from: "a:1", to: "b:1" };
  expect(wireOhms({ ...wire, mm2: 1, metres: 10 })).toBeCloseTo(0.195, 9);
  expect(wireOhms({ ...wire, awg: 18, metres: 10 })).toBeCloseTo(0.2095, 3);
  expect(wireOhms({ ...wire, mm2: 1 })).toBeNull();
  expect(wireOhms({ ...wire, metres: 10 })).toBeNull();
});

/** Ten metres there and ten back of 2.5 mm² (IEC 60228 class 5: 7.98 Ω/km) to a heater of 2 Ω. */
const longRun = () => {
  const { job } = new CircuitBuilder(24)
    .part("battery", "G1", { volts: 24, ohms: 0 })
    .part("heater", "E1", { ohms: 2 })
    .wire("G1:+ E1:1", "E1:2 G1:-");
  for (const wire of job.diagram.wires) Object.assign(wire, { mm2: 2.5, metres: 10 });
  return job;
};

test("a wire of known size and length drops what Ohm's law says, on either side of its load", () => {
  const solved = solveCircuit(longRun(), null, {});
  const amps = 24 / (2 + 2 * 0.0798);
  expect(solved.volts("G1:+", "E1:1")).toBeCloseTo(amps * 0.0798, 4);
  expect(solved.volts("E1:2", "G1:-")).toBeCloseTo(amps * 0.0798, 4);
  expect(solved.volts("E1:1", "E1:2")).toBeCloseTo(amps * 2, 3);
});

test("a healthy wire's band holds copper from a frosty morning to beside the engine", () => {
  // 0.004041 per kelvin at 20 °C (Kuphaldt's table); -10 and 80 °C
  const wire = setUp(longRun(), null, {}).wiring.branches.find(({ owner }) => owner === "W1");
  if (wire?.acts.is !== "ohmic") throw new Error("W1 is no resistor");
  const at = (celsius: number) => 0.0798 * (1 + 0.004041 * (celsius - 20));
  expect(wire.acts.low).toBeLessThanOrEqual(at(-10));
  expect(wire.acts.high).toBeGreaterThanOrEqual(at(80));
});
