import { expect, test } from "vitest";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

const RULE = "no-supply";

testExamplesOfPage(RULE);

test("feed and return in positions that exclude each other feed nothing", () => {
  const circuit = withBattery()
    .part("switch", "S1", {
      positions: ["a", "b"],
      control: "operator",
      contacts: [
        { between: ["1", "2"], closedIn: ["a"] },
        { between: ["3", "4"], closedIn: ["b"] },
      ],
    })
    .part("lamp", "P1")
    .wire("G1:+ S1:1", "S1:2 P1:1", "P1:2 S1:3", "S1:4 GND1:1");
  expect(findingsOf(RULE, circuit.job).map((one) => one.subjects)).toEqual([["P1"]]);
});

test("is silent where an untraced end, a module or a load in series could feed it", () => {
  const lamp = () => withBattery().part("lamp", "P1").wire("P1:2 GND1:1");
  const untraced = lamp().part("offpage", "X9").wire("X9:1 P1:1");
  const module = lamp().module("A1", { "1": null }).wire("A1:1 P1:1");
  const series = lamp().part("lamp", "P2").wire("G1:+ P2:1", "P2:2 P1:1");
  for (const circuit of [untraced, module, series])
    expect(findingsOf(RULE, circuit.job)).toEqual([]);
});
