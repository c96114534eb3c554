import { expect, test } from "vitest";
import { parseFieldNumber } from "../../../src/session/index.ts";

test.each([
  ["12,4", 12.4],
  [" 12.4v ", 12.4],
  ["12.4 V", 12.4],
  ["1k2", 1200],
  ["4R7", 4.7],
  ["1.5 kΩ", 1500],
  ["320", 320],
  ["2M", 2e6],
  ["0.75mm²", 0.75],
  ["1,5 mm2", 1.5],
  ["3.2 m", 3.2],
  ["-5", -5],
  [".5", 0.5],
  ["10A", 10],
])("%s is read as %d", (text, value) => {
  expect(parseFieldNumber(text)).toBeCloseTo(value, 9);
});

test.each(["", "abc", "12..4", "1k2k", "OL", "12 apples"])("%j is no number", (text) => {
  expect(parseFieldNumber(text)).toBeNull();
});
