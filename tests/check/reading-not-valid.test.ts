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

const RULE = "reading-not-valid";

testExamplesOfPage(RULE);

const judged = (one: Reading) =>
  findingsOf(RULE, onMachine(matched(lampModule()), { readings: [one] }));

test("ohms on a live circuit, amps across a source, a probe on nothing", () => {
  expect(judged(reading("R1", 12, { quantity: "ohms" }))).toHaveLength(1);
  expect(
    judged(reading("R1", 9, { quantity: "amps", red: "battery+", black: "chassis" })),
  ).toHaveLength(1);
  expect(judged(reading("R1", 24, { red: "X7:9" }))).toHaveLength(1);
});

test("a test lamp on a sensor's line, with what is on it; the meter alone is sound there", () => {
  const circuit = lampModule();
  circuit.part("sender", "B1").wire("A1:3 B1:1", "B1:2 GND1:1");
  const on = (more: Partial<Reading>) =>
    findingsOf(
      RULE,
      onMachine(matched(circuit), { readings: [reading("R1", 3, { red: "X1:3", ...more })] }),
    );
  const [found, ...others] = on({ with: "test-lamp" });
  expect(others).toEqual([]);
  expect(found?.message).toContain("No test lamp at X1:3: sender B1 is on this line");
  expect(on({})).toEqual([]);
});

test("a test lamp at a feed or across a load's terminals is sound", () => {
  const run = { unplugged: ["A1"] };
  expect(judged(reading("R1", 24, { with: "test-lamp", when: run }))).toEqual([]);
  expect(judged(reading("R1", 0, { red: "X1:3", with: "test-lamp", when: run }))).toEqual([]);
});

test("amps across a battery say which source it would short", () => {
  const [found] = judged(reading("R1", 9, { quantity: "amps", red: "battery+", black: "chassis" }));
  expect(found?.message).toContain("Across G1 an ammeter is a dead short");
});

test("OL is a result of ohms only", () => {
  expect(judged(reading("R1", "OL"))).toHaveLength(1);
});

test("ohms with the battery off are fine", () => {
  const dead = { unplugged: ["A1"], removed: ["G1"] };
  expect(judged(reading("R1", 0.3, { quantity: "ohms", red: "X1:2", when: dead }))).toEqual([]);
});

test("conditions that name what is not there", () => {
  const under = (when: Reading["when"]) => judged(reading("R1", 24.3, { when }))[0]?.message ?? "";
  expect(under({ unplugged: ["A9"] })).toContain("A9, which is not there");
  expect(under({ switches: { S9: "on" } })).toContain("switch S9 that is not there");
  expect(under({ switches: { F1: "on" } })).toContain("switch F1 that is not there");
  expect(under({ unplugged: ["A1", "X1"] })).toBe("");
});
