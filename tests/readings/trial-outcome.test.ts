import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Job, When } from "../../src/job/index.ts";
import { trialMoves, trialOutcome } from "../../src/readings/index.ts";
import { withBattery } from "../support/circuit-builder.ts";

const sweeper: Job = JSON.parse(readFileSync("sample-data/sweeper/job.json", "utf8"));
const outcome = (circuit: ReturnType<typeof withBattery>, when: When) =>
  trialOutcome(circuit.job, "machine1", when);

test("what comes on at once is what the trial's moves name", () => {
  const when: When = { switches: { S1: "run", S2: "pressed" } };
  const told = trialOutcome(sweeper, "sweeper14", when);
  const moves = trialMoves(sweeper, "sweeper14", when)?.stateMoves ?? [];
  expect(moves.length).toBeGreaterThan(0);
  expect([...told.brings].sort()).toEqual([...moves].sort());
  expect(told.states.M1).toBe("on");
  expect(told.states.P2).toBeUndefined();
});

test("the order counts: a button pressed before the key is on does not toggle the module", () => {
  const late = trialOutcome(sweeper, "sweeper14", { switches: { S2: "pressed", S1: "run" } });
  const early = trialOutcome(sweeper, "sweeper14", { switches: { S1: "run", S2: "pressed" } });
  expect(early.states.K2).toBe("on");
  expect(late.states.K2).toBeUndefined();
  expect(late.brings).toEqual(["E1"]);
});

/** A module that switches its lamp so many seconds after its input rose. */
const delayed = (does: "delay-on" | "flash", seconds: number) =>
  withBattery(12)
    .part("fuse", "F1")
    .contact("S1", "operator")
    .module(
      "A1",
      { "1": null, "2": null, "3": null, "4": null },
      {
        power: { supply: ["1"], ground: ["2"] },
        behaviour: { paths: [{ between: ["1", "4"], input: "3", active: "high", does, seconds }] },
      },
    )
    .part("lamp", "P1")
    .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1", "F1:2 S1:1", "S1:2 A1:3", "A1:4 P1:1")
    .wire("P1:2 GND1:1");
const pressed: When = { switches: { S1: "worked" } };

test("what comes on by itself later is told with its seconds", () => {
  expect(outcome(delayed("delay-on", 5), pressed)).toMatchObject({
    brings: [],
    later: [{ id: "P1", seconds: 5 }],
    states: { P1: "changes" },
    timed: false,
  });
});

test("past the looking ahead it says that something is still timed", () => {
  expect(outcome(delayed("delay-on", 900), pressed)).toMatchObject({ later: [], timed: true });
});

test("a flasher's lamp changes, and is neither on nor off", () => {
  const told = outcome(delayed("flash", 0.5), pressed);
  expect(told.states.P1).toBe("changes");
  expect(told.timed).toBe(true);
});

/** A valve held while the switch is at rest. */
const holding = () =>
  withBattery(12)
    .contact("S1", "operator", {
      contacts: [{ between: ["1", "2"], closedIn: ["rest"] }],
    })
    .part("solenoid", "Y1")
    .wire("G1:+ S1:1", "S1:2 Y1:1", "Y1:2 GND1:1");

test("what a trial lets go of is told: what it holds moves too", () => {
  expect(outcome(holding(), pressed)).toMatchObject({ brings: [], drops: ["Y1"], states: {} });
  expect(outcome(holding(), {}).states).toEqual({ Y1: "on" });
});

test("a fuse that a trial blows is named, and what it feeds is off from then on", () => {
  const short = withBattery(12)
    .part("fuse", "F1", { amps: 10 })
    .contact("S1", "operator")
    .part("lamp", "P1")
    .wire("G1:+ F1:1", "F1:2 P1:1", "P1:2 GND1:1", "F1:2 S1:1", "S1:2 GND1:1");
  expect(outcome(short, pressed)).toMatchObject({ blows: ["F1"], drops: ["P1"], states: {} });
});

test("what a module drives of which nobody has said anything may come on, and is never off", () => {
  const unsaid = withBattery(12)
    .contact("S1", "operator")
    .module("A1", { "1": null, "2": null })
    .part("lamp", "P1")
    .wire("G1:+ S1:1", "S1:2 A1:1", "A1:2 P1:1", "P1:2 GND1:1");
  const told = outcome(unsaid, pressed);
  expect(told.brings).toEqual([]);
  expect(told.may).toEqual(["P1"]);
  expect(told.states.P1).toBe("unknown");
});

test("two lamps in a row share the volts: whether they are seen to burn can't be told", () => {
  const row = withBattery(12)
    .contact("S1", "operator")
    .part("lamp", "P1", { watts: 21 })
    .part("lamp", "P2", { watts: 21 })
    .wire("G1:+ S1:1", "S1:2 P1:1", "P1:2 P2:1", "P2:2 GND1:1");
  expect(outcome(row, pressed).states).toEqual({ P1: "unknown", P2: "unknown" });
});

test("a trial that can't be done says why and tells nothing", () => {
  const none = { brings: [], may: [], drops: [], states: {} };
  expect(outcome(holding(), { switches: { S1: "gone" } })).toMatchObject({
    refused: expect.stringContaining('no position "gone"'),
    ...none,
  });
  expect(outcome(holding(), { standIn: "SI1" })).toMatchObject({
    refused: expect.stringContaining("stand-in"),
    ...none,
  });
});
