import { expect, test } from "vitest";
import type { FirstCheck, Machine, Reading, When } from "../../src/job/index.ts";
import {
  judgeCheck,
  judgeReading,
  lastCheck,
  meterProof,
  predict,
  type ReadingSetup,
} from "../../src/readings/index.ts";
import { withBattery } from "../support/circuit-builder.ts";

const check = (name: FirstCheck["check"], value: number, more: Partial<FirstCheck> = {}) =>
  ({ id: `C-${name}-${value}`, check: name, value, ...more }) satisfies FirstCheck;
const judged = (
  name: FirstCheck["check"],
  value: number,
  more: Partial<FirstCheck> = {},
  volts = 12,
) => judgeCheck(check(name, value, more), volts);

test("a battery at rest is told by the table, in fives of a per cent", () => {
  expect(judged("battery-at-rest", 12.6)).toMatchObject({
    good: true,
    sentence: "About 95 % charged.",
  });
  expect(judged("battery-at-rest", 24.48, {}, 24).sentence).toContain("50 %");
  expect(judged("battery-at-rest", 12.1)).toMatchObject({ good: false });
  expect(judged("battery-at-rest", 12.1).sentence).toContain("charge it first");
  expect(judged("battery-at-rest", 11.2).sentence).toContain("Flat");
  expect(judged("battery-at-rest", 13.6).sentence).toContain("Let it rest");
});

test("at another temperature nothing is corrected, and that is said", () => {
  expect(judged("battery-at-rest", 12.6, { celsius: -5 }).sentence).toContain(
    "nothing is corrected",
  );
  expect(judged("battery-at-rest", 12.6, { celsius: 25 }).sentence).not.toContain("corrected");
});

test("under load 9.6 of 12 V hold, 19.2 of 24 (common practice)", () => {
  expect(judged("battery-under-load", 9.6).good).toBe(true);
  expect(judged("battery-under-load", 9.4).good).toBe(false);
  expect(judged("battery-under-load", 19.1, {}, 24).good).toBe(false);
});

test("a meter is proved by a known source, leads by having next to no ohms", () => {
  expect(judged("meter-before", 12.58, { known: 12.6 }).good).toBe(true);
  expect(judged("meter-after", 11.9, { known: 12.6 }).sentence).toContain("below the known");
  expect(judged("meter-before", 12.58).sentence).toContain("known source");
  expect(judged("leads-together", 0.2).good).toBe(true);
  expect(judged("leads-together", 1.4).good).toBe(false);
});

test("the latest of a name counts by its time, not by its place", () => {
  const late = check("battery-at-rest", 12.6, { at: "2025-09-16T10:00:00+02:00" });
  const early = check("battery-at-rest", 12.1, { at: "2025-09-16T07:59:00Z" });
  expect(lastCheck([late, early], "battery-at-rest")).toBe(late);
  const undated = check("battery-at-rest", 12.2);
  expect(lastCheck([undated, check("battery-at-rest", 12.3)], "battery-at-rest")?.value).toBe(12.3);
  expect(lastCheck([late, undated], "battery-at-rest")).toBe(late);
});

const reading = (id: string, at?: string): Reading => ({
  id,
  quantity: "volts",
  red: "battery+",
  black: "chassis",
  value: 12.5,
  when: {},
  ...(at === undefined ? {} : { at: `2025-09-16T${at}:00` }),
});
const proof = (readings: Reading[], ...firstChecks: FirstCheck[]) =>
  meterProof({ readings, firstChecks } satisfies Pick<Machine, "readings" | "firstChecks">, 12);
const before = (at: string, value = 12.6) =>
  check("meter-before", value, { known: 12.6, at: `2025-09-16T${at}:00` });
const after = (at: string, value = 12.6) =>
  check("meter-after", value, { known: 12.6, at: `2025-09-16T${at}:00` });

test("readings between two good proofs are proved, others are named", () => {
  const readings = [
    reading("R1", "08:00"),
    reading("R2", "09:00"),
    reading("R3", "11:00"),
    reading("R4"),
  ];
  expect(proof(readings)).toMatchObject({ state: "missing", unproved: ["R1", "R2", "R3", "R4"] });
  expect(proof(readings, before("08:30"))).toMatchObject({ state: "open" });
  const shut = proof(readings, before("08:30"), after("10:00"));
  expect(shut).toMatchObject({ state: "open", unproved: ["R1", "R3", "R4"] });
  expect(shut.sentence).toContain("R1, R3, R4 are not proved");
  expect(proof([readings[1] as Reading], before("08:30"), after("10:00")).state).toBe("proved");
});

test("a meter that fails afterwards takes the proof from everything since the last good one", () => {
  const failed = proof([reading("R2", "09:00")], before("08:30"), after("10:00", 11));
  expect(failed).toMatchObject({ state: "failed", unproved: ["R2"] });
  // a good one before it still stands for what lies before it
  const two = proof(
    [reading("R1", "08:00"), reading("R2", "09:00")],
    before("07:00"),
    after("08:30"),
    after("10:00", 11),
  );
  expect(two.unproved).toEqual(["R2"]);
});

/** 12 V, one heater on a known wire. */
function heated(...firstChecks: FirstCheck[]) {
  const circuit = withBattery(12)
    .part("fuse", "F1")
    .part("heater", "E1", { ohms: 6 })
    .wire("G1:+ F1:1", "F1:2 E1:1", "E1:2 GND1:1");
  const [machine] = circuit.job.machines;
  if (machine) machine.firstChecks = firstChecks;
  return circuit.job;
}
const at = (job: ReturnType<typeof heated>, quantity: ReadingSetup["quantity"], when: When = {}) =>
  predict(job, "machine1", { quantity, red: "F1:2", black: "chassis", when });

test("the battery as measured takes the place of the usual limits", () => {
  const usual = at(heated(), "volts");
  const low = at(heated(check("battery-at-rest", 12.1)), "volts");
  expect(usual.predicted).toBeCloseTo(12.58, 1);
  expect(low.predicted).toBeCloseTo(12.08, 1);
  expect((low.high ?? 0) - (low.low ?? 0)).toBeLessThan((usual.high ?? 0) - (usual.low ?? 0) - 0.5);
  // within what the key being on and the meter's own error may do
  expect(low.high ?? 99).toBeLessThan(12.5);
});

test("a reading is judged by the checks of its own day, never by those of another", () => {
  const full: FirstCheck = check("battery-at-rest", 12.6, { at: "2025-09-16T08:00:00" });
  const low: FirstCheck = check("battery-at-rest", 12.05, { at: "2025-09-20T08:00:00" });
  const job = heated(full, low);
  const on = (value: number, at?: string) =>
    judgeReading(job, "machine1", { ...reading("R1"), red: "F1:2", value, ...(at ? { at } : {}) })
      .verdict;
  expect(on(12.55, "2025-09-16T09:00:00")).toBe("inside");
  expect(on(12.55, "2025-09-20T09:00:00")).toBe("outside");
  expect(on(11.95, "2025-09-20T09:00:00")).toBe("inside");
  // without a time, or on a day without checks, the usual limits stand
  for (const at of [undefined, "2025-10-01T09:00:00"]) {
    expect(on(12.55, at)).toBe("inside");
    expect(on(11.95, at)).toBe("inside");
    expect(on(8, at)).toBe("outside");
  }
});

test("a battery that is flat or on charge is no measure of a healthy one", () => {
  for (const value of [10.5, 14.2]) {
    expect(at(heated(check("battery-at-rest", value)), "volts")).toEqual(at(heated(), "volts"));
  }
});

test("with two batteries nobody can say which was measured", () => {
  const job = heated(check("battery-at-rest", 12.1));
  const [battery] = job.diagram.parts;
  if (battery?.kind === "battery") job.diagram.parts.push({ ...battery, id: "G2" });
  job.diagram.wires.push(
    { id: "Wx", from: "G2:+", to: "G1:+" },
    { id: "Wy", from: "G2:-", to: "G1:-" },
  );
  expect(at(job, "volts").predicted).toBeCloseTo(12.58, 1);
});

test("cranking pulls any battery down, however it stood at rest", () => {
  const cranking = at(heated(check("battery-at-rest", 12.5)), "volts", { engine: "cranking" });
  expect(cranking.low ?? 99).toBeLessThan(9.6);
});

test("the leads as measured take the place of half an ohm, in ohms and in amps", () => {
  const dead: When = { removed: ["G1"] };
  const usual = at(heated(), "ohms", dead);
  const fine = at(heated(check("leads-together", 0.1)), "ohms", dead);
  const bad = at(heated(check("leads-together", 2)), "ohms", dead);
  expect(fine.high ?? 0).toBeCloseTo((usual.high ?? 0) - 0.3, 6);
  // leads that failed are changed before anything is read: nothing is known of the next ones
  expect(bad.high).toBe(usual.high);
  expect(fine.low).toBe(usual.low);
  const amps = (job: ReturnType<typeof heated>) =>
    predict(job, "machine1", {
      quantity: "amps",
      red: "F1:1",
      black: "F1:2",
      when: { removed: ["F1"] },
    });
  const low = (...checks: Parameters<typeof heated>) => amps(heated(...checks)).low ?? Number.NaN;
  expect(low(check("leads-together", 0.4))).toBeLessThan(low() * 0.98);
  expect(low(check("leads-together", 2))).toBe(low());
});
