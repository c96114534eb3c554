import { expect, test } from "vitest";
import type { Reading } from "../../src/job/index.ts";
import {
  findingsOf,
  lampModule,
  matched,
  onMachine,
  reading,
  testExamplesOfPage,
} from "../support/check-example.ts";
import { CircuitBuilder } from "../support/circuit-builder.ts";

const RULE = "reading-contradicts-printed";

testExamplesOfPage(RULE);

const withReading = (printed: Readonly<Record<string, string>>, one: Reading) =>
  onMachine(matched(lampModule(printed)), { readings: [one] });

test("full voltage that holds under load where the word says ground", () => {
  const lit = reading("R1", 23.9, { with: "test-lamp" });
  expect(findingsOf(RULE, withReading({ "1": "GND" }, lit))[0]?.subjects[0]).toBe("R1");
  expect(findingsOf(RULE, withReading({ "1": "PWR" }, lit))).toEqual([]);
});

test("open-circuit volts contradict nothing", () => {
  expect(findingsOf(RULE, withReading({ "1": "GND" }, reading("R1", 24.1)))).toEqual([]);
});

test("nothing there contradicts nothing", () => {
  const dead = reading("R1", 0, { with: "test-lamp" });
  expect(findingsOf(RULE, withReading({ "1": "PWR" }, dead))).toEqual([]);
});

test("a solid way back on a dead circuit where the word says supply", () => {
  const solid = reading("R1", 0.2, {
    quantity: "ohms",
    red: "X1:2",
    when: { unplugged: ["A1"], removed: ["G1"] },
  });
  expect(findingsOf(RULE, withReading({ "2": "PWR" }, solid))).toHaveLength(1);
  expect(findingsOf(RULE, withReading({ "2": "GND" }, solid))).toEqual([]);
});

test("of a word that may mean several things, only what each of them forbids", () => {
  const lit = reading("R1", 23.9, { with: "test-lamp" });
  const found = (printed: string) => findingsOf(RULE, withReading({ "1": printed }, lit));
  expect(found("SIG GND")).toHaveLength(1);
  // "LAMP -" is a lamp's output or its ground; "BATTERIE -" is read as a feed or a ground.
  expect(found("LAMP -")).toEqual([]);
  expect(found("BATTERIE -")).toEqual([]);
});

test("a feed from between two batteries in series that has rubbed through to the frame is a feed all the same", () => {
  const circuit = new CircuitBuilder(24)
    .module("A1", { "1": "24V", "2": "GND", "3": "12V" })
    .part("battery", "G1", { volts: 12.6 })
    .part("battery", "G2", { volts: 12.6 })
    .part("fuse", "F1", { amps: 10 })
    .part("fuse", "F2", { amps: 10 })
    .part("ground", "GND1")
    .wire("G1:- GND1:1", "G1:+ G2:-", "G2:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1")
    .wire("G1:+ F2:1", "F2:2 A1:3");
  const solid = reading("R1", 0.05, {
    quantity: "ohms",
    red: "X1:3",
    when: { unplugged: ["A1"], removed: ["G1", "G2"] },
  });
  const job = onMachine(matched(circuit), { readings: [solid] });
  expect(findingsOf(RULE, job)).toEqual([]);
  expect(findingsOf("reading-unexpected", job)).toHaveLength(1);
});
