import { expect, test } from "vitest";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

const RULE = "loose-end";

testExamplesOfPage(RULE);

test("a wire that ends at a splice with nothing else on it", () => {
  const circuit = withBattery().part("splice", "SP1").wire("G1:+ SP1:1");
  expect(findingsOf(RULE, circuit.job).map((one) => one.subjects)).toEqual([["SP1", "SP1:1"]]);
});

test("a part that is wired to nothing is one finding, not one a pin", () => {
  const circuit = withBattery().wire("G1:+ GND1:1").part("fuse", "F1");
  expect(findingsOf(RULE, circuit.job).map((one) => one.subjects)).toEqual([["F1"]]);
});

test("free throws, unused relay contacts and free module pins are no loose ends", () => {
  const circuit = withBattery()
    .key("S1")
    .part("relay", "K1")
    .part("lamp", "P1")
    .module("A1", { "1": null, "2": null })
    .wire("G1:+ S1:30", "S1:15 K1:86", "K1:85 GND1:1", "G1:+ K1:30", "K1:87 P1:1")
    .wire("P1:2 GND1:1", "S1:15 A1:1");
  expect(findingsOf(RULE, circuit.job)).toEqual([]);
});

test("half a contact is one", () => {
  const circuit = withBattery().contact("S2", "operator").wire("G1:+ S2:1");
  expect(findingsOf(RULE, circuit.job).map((one) => one.subjects)).toEqual([["S2:2", "S2"]]);
});
