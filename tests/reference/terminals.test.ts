import { expect, test } from "vitest";
import { DIN_72552, IEC_81346 } from "../../src/standards/index.ts";
import { referenceRows } from "./rows.ts";

const codes = referenceRows("codes.csv");
const rowsOf = (standard: string) => codes?.filter((row) => row.standard === standard) ?? [];

test.skipIf(!codes)("every terminal of DIN 72552 with its meaning", () => {
  const published = Object.fromEntries(rowsOf("DIN 72552").map((row) => [row.code, row.meaning]));
  expect(Object.keys(published)).toHaveLength(50);
  // The published table only points to a note at 87: the standard and relay practice disagree.
  expect(published[87]).toContain("ISO relay practice = normally-open output");
  expect({ ...DIN_72552, 87: published[87] }).toEqual(published);
});

test("the terminals that decide a pinout (DIN 72552)", () => {
  expect(DIN_72552[30]).toContain("battery +");
  expect(DIN_72552[15]).toContain("ignition");
  expect(DIN_72552[31]).toContain("ground");
  expect(DIN_72552["31b"]).toContain("switched ground");
  expect(DIN_72552[87]).toContain("normally-open");
  expect(DIN_72552["87a"]).toContain("normally-closed");
});

test.skipIf(!codes)("every class letter of IEC 81346-2:2009", () => {
  const published = rowsOf("IEC 81346-2:2009").map((row) => [row.code, row.meaning]);
  expect(published).toHaveLength(18);
  expect(Object.entries(IEC_81346)).toEqual(published);
});
