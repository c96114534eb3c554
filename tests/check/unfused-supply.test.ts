import { expect, test } from "vitest";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

const RULE = "unfused-supply";

testExamplesOfPage(RULE);

test("names the loads and module pins that a battery feeds over no fuse, and no others", () => {
  const circuit = withBattery()
    .contact("S1", "operator")
    .part("fuse", "F1", { amps: 10 })
    .part("lamp", "P1")
    .part("lamp", "P2")
    .module("A1", { "1": null, "2": null })
    .wire("G1:+ S1:1", "S1:2 P1:1", "P1:2 GND1:1", "G1:+ F1:1", "F1:2 P2:1", "P2:2 GND1:1")
    .wire("G1:+ A1:1", "A1:2 GND1:1");
  expect(findingsOf(RULE, circuit.job).map(({ subjects }) => subjects)).toEqual([
    ["G1:+", "A1:1", "P1"],
  ]);
});

test("starter behind its solenoid, alternator and glow plugs are left out", () => {
  const circuit = withBattery()
    .part("relay", "K1")
    .part("motor", "M1", { ohms: 0.02 })
    .part("alternator", "G2")
    .part("heater", "E1", { ohms: 0.5 })
    .part("fuse", "F1", { amps: 10 })
    .key("S1")
    .wire("G1:+ K1:30", "K1:87 M1:1", "M1:2 GND1:1", "G1:+ G2:B+", "G2:E GND1:1")
    .wire("G1:+ E1:1", "E1:2 GND1:1", "G1:+ F1:1", "F1:2 S1:30", "S1:50 K1:86", "K1:85 GND1:1");
  expect(findingsOf(RULE, circuit.job)).toEqual([]);
  const blower = withBattery().part("motor", "M1").wire("G1:+ M1:1", "M1:2 GND1:1");
  expect(findingsOf(RULE, blower.job)).toHaveLength(1);
});

test("is silent where an untraced end lies on the way, and with plus on the frame", () => {
  const untraced = withBattery()
    .part("offpage", "X8")
    .part("lamp", "P1")
    .wire("G1:+ X8:1", "G1:+ P1:1", "P1:2 GND1:1");
  expect(findingsOf(RULE, untraced.job)).toEqual([]);
  const plusOnFrame = withBattery().wire("G1:+ GND1:1");
  plusOnFrame.job.diagram.wires.shift();
  plusOnFrame
    .part("lamp", "P1")
    .part("fuse", "F1", { amps: 5 })
    .wire("P1:1 GND1:1", "P1:2 F1:1", "F1:2 G1:-");
  expect(findingsOf(RULE, plusOnFrame.job)).toEqual([]);
});
