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
import type { CircuitBuilder } from "../support/circuit-builder.ts";

const RULE = "readings-disagree";

testExamplesOfPage(RULE);

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

const several = (circuit: CircuitBuilder, ...readings: Reading[]) =>
  findingsOf(RULE, onMachine(matched(circuit), { readings }));

test("three readings of one thing are one finding, with every value and time, the earlier first", () => {
  const found = several(
    lampModule(),
    reading("R1", 23.2, { at: "2026-11-14T09:25:00Z" }),
    reading("R2", 24.9, { at: "2026-11-14T09:40:00Z" }),
    reading("R3", 21.4, { at: "2026-11-14T09:10:00+00:00" }),
  );
  // each is within a tenth of the first, and the last two are not within a tenth of one another
  expect(found).toHaveLength(1);
  expect(found[0]?.subjects).toEqual(["R3", "R1", "R2", "X1:1", "chassis"]);
  expect(found[0]?.message).toMatch(/3 times.*21\.4 V.*09:10.*23\.2 V.*09:25.*24\.9 V.*09:40/);
});

test("at one and the same time they disagree all the same, and a missing time is said", () => {
  const at = "2026-11-14T09:10:00Z";
  expect(pair(reading("R1", 24.3, { at }), reading("R2", 11.8, { at }))).toHaveLength(1);
  const [found] = pair(reading("R1", 24.3, { at }), reading("R2", 11.8));
  expect(found?.message).toContain("11.8 V (no time noted)");
});

test("it does not say that something comes and goes where something may have been repaired", () => {
  const [found] = pair(
    reading("R1", 0.2, { at: "2026-11-14T09:10:00Z" }),
    reading("R2", 24.1, { at: "2026-11-15T16:00:00Z" }),
  );
  expect(found?.message).toContain("Unless something was repaired or changed in between");
});

test("a switch named where it rests, and ids named in another order or twice, change nothing", () => {
  const withKey = () => lampModule().key("S1").part("lamp", "P9", { watts: 5 });
  const when = (more: Reading["when"]) => ({ when: { unplugged: ["A1"], ...more } });
  const disagree = (a: Reading["when"], b: Reading["when"]) =>
    several(withKey(), reading("R1", 24.3, when(a)), reading("R2", 11.8, when(b))).length;
  expect(disagree({}, { switches: { S1: "off" } })).toBe(1);
  expect(disagree({}, { engine: "off" })).toBe(1);
  expect(disagree({ removed: ["P1", "P9"] }, { removed: ["P9", "P1", "P9"] })).toBe(1);
  expect(disagree({}, { switches: { S1: "run" } })).toBe(0);
  expect(disagree({}, { engine: "running" })).toBe(0);
});

test("a cavity and its pin are one point plugged in, and two unplugged", () => {
  const both = (when: Reading["when"]) =>
    several(lampModule(), reading("R1", 24.3, { when }), reading("R2", 11.8, { red: "A1:1", when }))
      .length;
  expect(both({})).toBe(1);
  expect(both({ unplugged: ["A1"] })).toBe(0);
});

test("a ground on the frame is chassis, and one elsewhere is not", () => {
  const circuit = () => lampModule().part("ground", "GND3", { place: "engine" });
  const to = (black: string) =>
    several(circuit(), reading("R1", 24.3), reading("R2", 11.8, { black })).length;
  expect(to("GND2:1")).toBe(1);
  expect(to("GND3:1")).toBe(0);
});

test("ohms with the leads exchanged may differ by a diode on the way", () => {
  const when = { unplugged: ["A1"], removed: ["G1"] };
  const ohms = (id: string, value: Reading["value"], more: Partial<Reading> = {}) =>
    reading(id, value, { quantity: "ohms", red: "X1:3", when, ...more });
  const turned = { red: "chassis", black: "X1:3" };
  expect(pair(ohms("R1", "OL"), ohms("R2", 12, turned))).toEqual([]);
  expect(pair(ohms("R1", "OL"), ohms("R2", 12))).toHaveLength(1);
});

test("no way is no way, whether the meter says OL or some megohms", () => {
  const when = { unplugged: ["A1"], removed: ["G1"] };
  const ohms = (id: string, value: Reading["value"]) =>
    reading(id, value, { quantity: "ohms", when });
  expect(pair(ohms("R1", "OL"), ohms("R2", 18e6))).toEqual([]);
  expect(pair(ohms("R1", 3e6), ohms("R2", 18e6))).toEqual([]);
  expect(pair(ohms("R1", "OL"), ohms("R2", 40_000))).toHaveLength(1);
});

test("ghost volts where nothing holds the point wander, full volts there come and go", () => {
  const open = () => {
    const circuit = lampModule().part("splice", "SP9");
    circuit.job.diagram.wires = circuit.job.diagram.wires.filter(({ to }) => to !== "A1:1");
    return circuit;
  };
  const volts = (a: number, b: number) => several(open(), reading("R1", a), reading("R2", b));
  expect(volts(0.3, 2.9)).toEqual([]);
  expect(volts(0.3, 24)).toHaveLength(1);
});

test("two test lamps differ, and in series with a load show different volts", () => {
  const lamp = (id: string, value: number) =>
    reading(id, value, { red: "battery+", black: "X1:3", with: "test-lamp" });
  expect(pair(lamp("R1", 14.6), lamp("R2", 18.1))).toEqual([]);
  // nothing at all is no lamp's doing
  expect(pair(lamp("R1", 14.6), lamp("R2", 0.1))).toHaveLength(1);
  const meter = (id: string, value: number) => reading(id, value, { black: "X1:2" });
  expect(pair(meter("R1", 24.6), meter("R2", 14.1))).toHaveLength(1);
});
