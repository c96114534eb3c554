import { expect, test } from "vitest";
import { wireOhms } from "../../src/circuit/index.ts";
import {
  gaugeArea,
  gaugeDiameter,
  ohmsPerMetreOfArea,
  ohmsPerMetreOfGauge,
} from "../../src/standards/index.ts";
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
