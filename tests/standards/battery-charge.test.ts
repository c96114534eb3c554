import { expect, test } from "vitest";
import {
  BCI_CHARGE_AT_REST,
  chargeAtRest,
  leastUnderLoad,
  restVolts,
} from "../../src/standards/index.ts";

test("the rows are those of BCI's table at 26.7 °C", () => {
  // Battery Council International, open-circuit volts at 80 °F
  expect(BCI_CHARGE_AT_REST).toEqual([
    [12.65, 100],
    [12.45, 75],
    [12.24, 50],
    [12.06, 25],
    [11.89, 0],
  ]);
});

test("between the rows it goes in a straight line, beyond them it stays at full or flat", () => {
  expect(chargeAtRest(12.65, 12)).toBe(100);
  expect(chargeAtRest(13.1, 12)).toBe(100);
  expect(chargeAtRest(12.55, 12)).toBeCloseTo(87.5, 6);
  expect(chargeAtRest(12.24, 12)).toBeCloseTo(50, 6);
  expect(chargeAtRest(11.89, 12)).toBeCloseTo(0, 6);
  expect(chargeAtRest(11.2, 12)).toBe(0);
});

test("24 V counts twice", () => {
  expect(chargeAtRest(24.48, 24)).toBeCloseTo(50, 6);
  expect(restVolts(100, 24)).toBeCloseTo(25.3, 6);
  // US Army TM 5-2420-230-24-1: 25.2 V is a charged 24 V system at rest
  expect(chargeAtRest(25.2, 24)).toBeGreaterThan(90);
  // common practice, no source: 9.6 V of 12
  expect(leastUnderLoad(12)).toBeCloseTo(9.6, 6);
  expect(leastUnderLoad(24)).toBeCloseTo(19.2, 6);
});
