import { expect, test } from "vitest";
import type { Reading } from "../../src/job/index.ts";
import {
  findingsOf,
  lampModule,
  matched,
  onMachine,
  pageExamples,
  reading,
} from "../support/check-example.ts";

const RULE = "readings-disagree";

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

const pair = (a: Reading, b: Reading) =>
  findingsOf(RULE, onMachine(matched(lampModule()), { readings: [a, b] }));

test("gives both values and both times", () => {
  const [found] = pair(
    reading("R1", 24.3, { at: "2026-11-14T09:10:00Z" }),
    reading("R2", 11.8, { at: "2026-11-14T09:25:00Z" }),
  );
  expect(found?.subjects.slice(0, 2)).toEqual(["R1", "R2"]);
  expect(found?.message).toMatch(
    /24\.3 V \(2026-11-14T09:10:00Z\).*11\.8 V \(2026-11-14T09:25:00Z\)/,
  );
});

test("other conditions are another thing", () => {
  expect(pair(reading("R1", 24.3), reading("R2", 11.8, { when: {} }))).toEqual([]);
  expect(pair(reading("R1", 24.3), reading("R2", 11.8, { with: "test-lamp" }))).toEqual([]);
});

test("exchanged probes turn the sign of volts and nothing else", () => {
  expect(
    pair(reading("R1", 24.3), reading("R2", -24.2, { red: "chassis", black: "X1:1" })),
  ).toEqual([]);
  expect(
    pair(reading("R1", 24.3), reading("R2", 24.2, { red: "chassis", black: "X1:1" })),
  ).toHaveLength(1);
});

test("OL against a number disagrees, OL against OL does not", () => {
  const ohms = (id: string, value: Reading["value"]) =>
    reading(id, value, { quantity: "ohms", when: { unplugged: ["A1"], removed: ["G1"] } });
  expect(pair(ohms("R1", "OL"), ohms("R2", 0.4))).toHaveLength(1);
  expect(pair(ohms("R1", "OL"), ohms("R2", "OL"))).toEqual([]);
});
