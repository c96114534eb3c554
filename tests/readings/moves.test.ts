import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Job, When } from "../../src/job/index.ts";
import { movesOf, type ReadingSetup, stateMoves } from "../../src/readings/index.ts";
import { withBattery } from "../support/circuit-builder.ts";

const job: Job = JSON.parse(readFileSync("sample-data/sweeper/job.json", "utf8"));
const machine = job.machines[0]?.id ?? "";
const at = (when: When, more: Partial<ReadingSetup> = {}) =>
  movesOf(job, machine, { quantity: "volts", red: "X1:3", black: "battery+", when, ...more });

test("with all at rest a meter moves nothing", () => {
  expect(at({})).toEqual({ moves: [], stateMoves: [], unknown: [] });
});

test("a test lamp from battery plus to a low-side output pulls its relay in, the meter does not", () => {
  const when = { unplugged: ["A1"] };
  expect(at(when, { with: "test-lamp" })?.moves).toContain("K2");
  expect(at(when, { with: "test-lamp" })?.stateMoves).not.toContain("K2");
  expect(at(when)?.moves).toEqual([]);
});

test("what the key brings on is the state's doing, not the instrument's", () => {
  const run = at({ switches: { S1: "run" }, unplugged: ["A1"] });
  expect(run).toMatchObject({ moves: [], stateMoves: ["E1"] });
  const start = at({ switches: { S1: "start" }, unplugged: ["A1"] });
  expect(start?.stateMoves).toEqual(expect.arrayContaining(["K1", "M2"]));
  expect(stateMoves(job, machine, { switches: { S1: "start" } })?.stateMoves).toContain("M2");
});

/** A relay that a module would ground, and the motor that it starts. */
const lowSide = () =>
  withBattery(12)
    .part("fuse", "F1")
    .module("A1", { "1": null, "2": null })
    .part("relay", "K1", { coilOhms: 80 })
    .part("motor", "M1", { ohms: 2 })
    .wire("G1:+ F1:1", "F1:2 K1:86", "K1:85 A1:1", "A1:2 GND1:1")
    .wire("F1:2 K1:30", "K1:87 M1:1", "M1:2 GND1:1");
const moved = (circuit: ReturnType<typeof lowSide>, setup: ReadingSetup) =>
  movesOf(circuit.job, "machine1", setup)?.moves;

test("a lamp too weak for the coil does not start the motor behind the relay", () => {
  const held = { quantity: "volts", red: "K1:85", black: "chassis", with: "test-lamp" } as const;
  const off = { unplugged: ["A1"] };
  // cold, the lamp takes next to nothing of the 12 V: the coil pulls in and the motor runs
  expect(moved(lowSide(), { ...held, when: off })).toEqual(expect.arrayContaining(["K1", "M1"]));
  const weak = lowSide();
  for (const part of weak.job.diagram.parts) if (part.kind === "relay") part.coilOhms = 12;
  expect(moved(weak, { ...held, when: off })).not.toContain("M1");
});

test("behind a relay that may or may not pull in with the lamp, the motor is named all the same", () => {
  const near = lowSide();
  for (const part of near.job.diagram.parts)
    if (part.kind === "relay") Object.assign(part, { coilOhms: 80, pullIn: 0.93 });
  const setup: ReadingSetup = {
    quantity: "volts",
    red: "K1:85",
    black: "chassis",
    with: "test-lamp",
    when: { unplugged: ["A1"] },
  };
  expect(moved(near, setup)).toEqual(expect.arrayContaining(["K1", "M1"]));
});

test("an ammeter in the place of a relay's contact is a jumper: the motor starts", () => {
  const setup: ReadingSetup = {
    quantity: "amps",
    red: "K1:30",
    black: "K1:87",
    when: { removed: ["K1"] },
  };
  expect(moved(lowSide(), setup)).toEqual(["M1"]);
  expect(moved(lowSide(), { ...setup, quantity: "volts" })).toEqual([]);
});

test("a jumper that stands in for a switch brings on what the switch would", () => {
  const circuit = withBattery(12)
    .contact("S1", "operator")
    .part("motor", "M1", { ohms: 2 })
    .wire("G1:+ S1:1", "S1:2 M1:1", "M1:2 GND1:1");
  const { job: own } = circuit;
  own.plugs.push({
    id: "X1",
    side: "wire",
    cavities: ["1", "2"].map((mark) => ({ mark, at: [0, 0] })),
  });
  own.links.push({ pin: "S1:1", cavity: "X1:1" }, { pin: "S1:2", cavity: "X1:2" });
  const map = ["1", "2"].map((terminal) => ({ cavity: `X1:${terminal}`, terminal }));
  own.standIns = [{ id: "J1", kind: "jumper", replaces: "S1", map }];
  const when: When = { removed: ["S1"], standIn: "J1" };
  expect(stateMoves(own, "machine1", when)).toEqual({ stateMoves: ["M1"], unknown: [] });
  expect(stateMoves(own, "machine1", { removed: ["S1"] })?.stateMoves).toEqual([]);
});

test("a module of which nothing is said may drive more, unless it is unplugged", () => {
  const circuit = lowSide();
  const setup: ReadingSetup = { quantity: "volts", red: "K1:85", black: "chassis", when: {} };
  expect(movesOf(circuit.job, "machine1", setup)?.unknown).toEqual(["A1"]);
  const off = { ...setup, when: { unplugged: ["A1"] } };
  expect(movesOf(circuit.job, "machine1", off)?.unknown).toEqual([]);
});

test("of a state that can't be nothing is said", () => {
  expect(at({ switches: { S1: "warp" } })).toBeNull();
});
