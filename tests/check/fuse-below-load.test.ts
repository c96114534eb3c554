import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { circuitOf, solveCircuit } from "../../src/circuit/index.ts";
import type { Job } from "../../src/job/index.ts";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";
import { loadedMachine } from "../support/healthy-machine.ts";
import { randomMachine } from "../support/random-machine.ts";

const RULE = "fuse-below-load";
const SEED = Number(process.env.PINTRUTH_SEED ?? 20260301);

testExamplesOfPage(RULE);

const fused = (amps: number) =>
  withBattery(12)
    .part("fuse", "F1", { amps })
    .contact("S1", "operator")
    .wire("G1:+ F1:1", "F1:2 S1:1");

test("one load through a switch: watts by volts, volts by ohms", () => {
  const lamp = (amps: number) =>
    fused(amps).part("lamp", "P1", { watts: 130 }).wire("S1:2 P1:1", "P1:2 GND1:1").job;
  const [found] = findingsOf(RULE, lamp(10));
  // 130 W at 12 V: 10.83 A
  expect(found?.subjects).toEqual(["F1", "P1"]);
  expect(found?.message).toMatch(/10\.8 A at 12 V/);
  expect(findingsOf(RULE, lamp(15))).toEqual([]);
  const led = fused(5)
    .part("lamp", "P1", { watts: 72, led: true })
    .wire("S1:2 P1:1", "P1:2 GND1:1");
  // 72 W at 12 V: 6 A
  expect(findingsOf(RULE, led.job)[0]?.message).toMatch(/6\.0 A/);
});

test("loads on one line count together only where nothing can part them", () => {
  const two = (apart: boolean) =>
    fused(10)
      .part("heater", "E1", { ohms: 2 })
      .part("heater", "E2", { ohms: 2 })
      .contact("S2", "operator")
      .wire("S1:2 E1:1", "E1:2 GND1:1", apart ? "S1:2 S2:1" : "S1:2 E2:1", "E2:2 GND1:1")
      .wire(...(apart ? ["S2:2 E2:1"] : [])).job;
  // 6 A each
  expect(findingsOf(RULE, two(false))[0]?.subjects).toEqual(["F1", "E1", "E2"]);
  expect(findingsOf(RULE, two(true))).toEqual([]);
});

test("inrush is not a draw, and what nobody said draws nothing", () => {
  const one = (build: (circuit: CircuitBuilder) => CircuitBuilder) =>
    findingsOf(RULE, build(fused(5)).wire("S1:2 M1:1", "M1:2 GND1:1").job);
  // a cold filament of 50 W takes some 40 A for a moment
  expect(one((circuit) => circuit.part("lamp", "M1", { watts: 50 }))).toEqual([]);
  // a winding of 0.5 Ω: 24 A standing, far less turning
  expect(one((circuit) => circuit.part("motor", "M1", { ohms: 0.5 }))).toEqual([]);
  expect(one((circuit) => circuit.part("heater", "M1"))).toEqual([]);
  expect(one((circuit) => circuit.part("lamp", "M1", { led: true }))).toEqual([]);
  const pull = fused(5)
    .part("solenoid", "M1", { ohmsPull: 0.3, ohmsHold: 12 })
    .wire("S1:2 M1:P", "S1:2 M1:H", "M1:E GND1:1");
  expect(findingsOf(RULE, pull.job)).toEqual([]);
});

test("is silent where another feed could share, where loads stand in series, or nothing gets back", () => {
  const heater = () => fused(5).part("heater", "E1", { ohms: 1 });
  const shared = heater()
    .part("fuse", "F2", { amps: 5 })
    .wire("G1:+ F2:1", "F2:2 E1:1", "S1:2 E1:1", "E1:2 GND1:1");
  const series = heater()
    .part("heater", "E2", { ohms: 1.5 })
    .wire("S1:2 E1:1", "E1:2 E2:1", "E2:2 GND1:1");
  const open = heater().wire("S1:2 E1:1");
  const beyond = heater().part("offpage", "X8").wire("S1:2 E1:1", "E1:2 GND1:1", "X8:1 E1:1");
  for (const circuit of [shared, series, open, beyond])
    expect(findingsOf(RULE, circuit.job)).toEqual([]);
});

/** A of the loads named, each at nominal volts by itself: a sum of its own, kind by kind. */
function drawn(job: Job, ids: readonly string[]): number {
  const { systemVoltage: volts } = job;
  const { parts } = circuitOf(job, job.machines[0]?.id ?? null);
  return ids.reduce((sum, id) => {
    const part = parts.find((one) => one.id === id);
    if (part?.kind === "module")
      return (part.behaviour?.loads ?? []).reduce((own, { ohms }) => own + volts / ohms, sum);
    if (part?.kind === "lamp") return sum + (part.watts ?? 0) / volts;
    if (part?.kind === "motor") return sum + volts / ((part.ohms ?? Number.POSITIVE_INFINITY) * 10);
    if (part?.kind === "solenoid" && part.ohmsHold) return sum + volts / part.ohmsHold;
    const ohms = part && "ohms" in part ? part.ohms : undefined;
    return sum + (ohms === undefined ? 0 : volts / ohms);
  }, 0);
}

test("on random machines it names only loads that draw more, and never one that the fuse carries", () => {
  let said = 0;
  for (let n = 0; n < 120; n++) {
    const random = seededRandom(SEED + n);
    const job = n % 2 === 0 ? loadedMachine(random).job : randomMachine(random);
    for (const part of job.diagram.parts)
      if (part.kind === "fuse" || part.kind === "breaker")
        part.amps = random.pick([0.2, 0.5, 1, 2, 5]);
    const found = findingsOf(RULE, job);
    for (const { subjects } of found) {
      const [fuse, ...loads] = subjects;
      const part = job.diagram.parts.find(({ id }) => id === fuse);
      const amps = part && "amps" in part ? (part.amps ?? 0) : 0;
      expect(drawn(job, loads), `seed ${SEED + n}, ${fuse}`).toBeGreaterThan(amps);
      said++;
    }
  }
  expect(said).toBeGreaterThan(8);
});

test("what it names blows the fuse in some position of the solver's", () => {
  let told = 0;
  for (let n = 0; n < 60; n++) {
    const random = seededRandom(SEED + n);
    const { job } = loadedMachine(random);
    const fuse = job.diagram.parts.find((part) => part.kind === "fuse");
    if (fuse?.kind !== "fuse") continue;
    fuse.amps = random.pick([0.2, 0.4, 0.7, 1]);
    const battery = job.diagram.parts.find((part) => part.kind === "battery");
    if (battery?.kind === "battery") Object.assign(battery, { volts: job.systemVoltage, ohms: 0 });
    if (findingsOf(RULE, job).length === 0) continue;
    told++;
    const settled = { ...job };
    const { flows } = solveCircuit(settled, null, { switches: { S1: "worked" } });
    const through = Math.abs(flows.find(({ part }) => part === "F1")?.amps ?? 0);
    // wires of known size take a little of it
    expect(through * 1.05, `seed ${SEED + n}`).toBeGreaterThan(fuse.amps);
  }
  expect(told).toBeGreaterThan(5);
});
