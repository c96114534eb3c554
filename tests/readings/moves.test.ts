import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Job, When } from "../../src/job/index.ts";
import { comesOn } from "../../src/readings/index.ts";

const job: Job = JSON.parse(readFileSync("sample-data/sweeper/job.json", "utf8"));
const machine = job.machines[0]?.id ?? "";
const acting = (when: When, more: object = {}) =>
  comesOn(job, machine, { quantity: "volts", red: "X1:3", black: "battery+", when, ...more }).map(
    (part) => part.id,
  );

test("with all at rest a meter moves nothing", () => {
  expect(acting({})).toEqual([]);
});

test("a test lamp from battery plus to a low-side output pulls its relay in", () => {
  expect(acting({ unplugged: ["A1"] }, { with: "test-lamp" })).toEqual(
    expect.arrayContaining(["K2"]),
  );
  expect(acting({ unplugged: ["A1"] })).not.toContain("K2");
});

test("the key's positions say what they bring on", () => {
  expect(acting({ switches: { S1: "run" }, unplugged: ["A1"] })).toEqual(["E1"]);
  expect(acting({ switches: { S1: "start" }, unplugged: ["A1"] })).toEqual(
    expect.arrayContaining(["K1", "M2"]),
  );
});
