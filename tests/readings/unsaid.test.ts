import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { createPlay } from "../../src/circuit/index.ts";
import { predict } from "../../src/readings/index.ts";
import { withBattery } from "../support/circuit-builder.ts";

const volts = (red: string) => ({ quantity: "volts", red, black: "chassis", when: {} }) as const;

/** A module of which nothing is said drives a relay, through a diode where `diode` says so. */
const driven = (diode: boolean) => {
  const circuit = withBattery()
    .module("A1", { "1": null, "2": null, "3": null })
    .part("relay", "K1", { diodeCathode: "86" })
    .part("lamp", "P1")
    .wire("G1:+ A1:1", "A1:2 GND1:1", "K1:85 GND1:1", "G1:+ K1:30", "K1:87 P1:1", "P1:2 GND1:1");
  return diode
    ? circuit.part("diode", "V1").wire("A1:3 V1:A", "V1:K K1:86")
    : circuit.wire("A1:3 K1:86");
};

test("a diode that blocks hides nothing that nobody has said", () => {
  for (const diode of [false, true]) {
    const { job } = driven(diode);
    for (const red of ["K1:86", "P1:1"]) {
      const found = predict(job, "machine1", volts(red));
      expect(found.predicted).toBeNull();
      expect(found.low).toBeNull();
    }
    const state = createPlay(job, null).state();
    expect(state.pins["P1:1"]?.state).toBe("unknown");
    expect(state.parts.K1?.undecided).toBe(true);
  }
});

test("full volts beyond such a diode are evidence of nothing wrong", () => {
  const { job } = driven(true);
  job.machines[0]?.readings.push({ id: "r1", ...volts("P1:1"), value: 24.6 });
  const rules = checkJob(job, "machine1").findings.map(({ rule }) => rule);
  expect(rules.filter((rule) => rule.startsWith("reading-"))).toEqual([]);
});

test("what a converter gives it draws, and nobody has said how much", () => {
  const { job } = withBattery()
    .part("fuse", "F1", { amps: 10 })
    .part("converter", "T1", { outVolts: 12 })
    .part("lamp", "P1", { watts: 55 })
    .wire("G1:+ F1:1", "F1:2 T1:in+", "T1:in- GND1:1", "T1:out- GND1:1")
    .wire("T1:out+ P1:1", "P1:2 GND1:1");
  const amps = predict(job, "machine1", {
    quantity: "amps",
    red: "F1:1",
    black: "F1:2",
    when: { removed: ["F1"] },
  });
  expect(amps.predicted).toBeNull();
  expect(amps.low).toBeNull();
  expect(predict(job, "machine1", volts("T1:in+")).predicted).toBeGreaterThan(24);
});
