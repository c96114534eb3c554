import { expect, test } from "vitest";
import { findingsOf, lampModule, testExamplesOfPage } from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

const RULE = "dead-short";

testExamplesOfPage(RULE);

test("names the position and the path", () => {
  const circuit = lampModule().contact("S2", "operator").wire("F1:2 S2:1", "S2:2 GND2:1");
  const [found, ...more] = findingsOf(RULE, circuit.job);
  expect(more).toEqual([]);
  expect(found?.message).toContain("switch S2 in worked");
  expect(found?.because?.filter((id) => !id.startsWith("W"))).toEqual(["G1", "F1", "S2", "GND2"]);
});

test("a short whatever the switches do", () => {
  const [found] = findingsOf(RULE, lampModule().wire("F1:2 GND2:1").job);
  expect(found?.message).toContain("every switch in any position");
});

test("is silent where positions exclude each other", () => {
  const circuit = lampModule()
    .part("switch", "S2", {
      positions: ["up", "down"],
      control: "operator",
      contacts: [
        { between: ["1", "2"], closedIn: ["up"] },
        { between: ["2", "3"], closedIn: ["down"] },
      ],
    })
    .wire("F1:2 S2:1", "S2:3 GND2:1");
  expect(findingsOf(RULE, circuit.job)).toEqual([]);
});

test("is silent where two relays lock each other out, and speaks where they do not", () => {
  const reversing = (interlocked: boolean) => {
    const circuit = withBattery()
      .part("relay", "K1")
      .part("relay", "K2")
      .contact("S1", "operator")
      .contact("S2", "operator")
      .part("fuse", "F1")
      .wire("G1:+ F1:1", "F1:2 S1:1", "F1:2 S2:1")
      .wire("K1:85 GND1:1", "K2:85 GND1:1")
      .part("relay", "K3")
      .part("relay", "K4")
      .wire("F1:2 K3:30", "K3:87 K4:30", "K4:87 GND1:1");
    // K3 and K4 follow K1 and K2, whose coils run through each other's closed contacts or not.
    circuit.wire("K1:86 K3:86", "K3:85 GND1:1", "K2:86 K4:86", "K4:85 GND1:1");
    return interlocked
      ? circuit.wire("S1:2 K2:30", "K2:87a K1:86", "S2:2 K1:30", "K1:87a K2:86").job
      : circuit.wire("S1:2 K1:86", "S2:2 K2:86").job;
  };
  expect(findingsOf(RULE, reversing(false))).toHaveLength(1);
  expect(findingsOf(RULE, reversing(true))).toEqual([]);
});

test("batteries in series are no short", () => {
  const circuit = withBattery(12).part("battery", "G2").wire("G2:- G1:+");
  expect(findingsOf(RULE, circuit.job)).toEqual([]);
});

test("what only another module could bring about is not counted", () => {
  const circuit = lampModule()
    .part("relay", "K1")
    .module("A2", { "1": null })
    .wire("A2:1 K1:86", "K1:85 GND1:1", "F1:2 K1:30", "K1:87 GND2:1");
  expect(findingsOf(RULE, circuit.job)).toEqual([]);
});

test("current does not run against a diode", () => {
  const along = lampModule().part("diode", "R1").wire("F1:2 R1:A", "R1:K GND2:1");
  const against = lampModule().part("diode", "R1").wire("F1:2 R1:K", "R1:A GND2:1");
  expect(findingsOf(RULE, along.job)).toHaveLength(1);
  expect(findingsOf(RULE, against.job)).toEqual([]);
});
