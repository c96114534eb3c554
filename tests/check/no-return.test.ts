import { expect, test } from "vitest";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

const RULE = "no-return";

testExamplesOfPage(RULE);

test("both ends fed and none grounded is no way back", () => {
  const circuit = withBattery().part("lamp", "P1").wire("G1:+ P1:1", "G1:+ P1:2");
  expect(findingsOf(RULE, circuit.job).map((one) => one.subjects)).toEqual([["P1"]]);
});

test("a return through a relay that can never pull in is none", () => {
  const circuit = withBattery()
    .part("lamp", "P1")
    .part("relay", "K1")
    .wire("G1:+ P1:1", "P1:2 K1:30", "K1:87 GND1:1", "K1:86 GND1:1", "K1:85 GND1:1");
  expect(findingsOf(RULE, circuit.job).map((one) => one.subjects)).toEqual([["P1"]]);
});

test("is silent where a module's pin or an untraced end could be the way back", () => {
  const module = withBattery().part("lamp", "P1").module("A1", { "1": null });
  expect(findingsOf(RULE, module.wire("G1:+ P1:1", "P1:2 A1:1").job)).toEqual([]);
  const untraced = withBattery().part("lamp", "P1").part("offpage", "X9");
  expect(findingsOf(RULE, untraced.wire("G1:+ P1:1", "P1:2 X9:1").job)).toEqual([]);
});
