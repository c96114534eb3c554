import { expect, test } from "vitest";
import type { When } from "../../src/job/index.ts";
import { movesOf, predict, type ReadingSetup } from "../../src/readings/index.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const at = (circuit: CircuitBuilder, setup: ReadingSetup) =>
  predict(circuit.job, "machine1", setup);
const lamp = (red: string, when: When = {}, black = "chassis"): ReadingSetup => ({
  quantity: "volts",
  red,
  black,
  when,
  with: "test-lamp",
});
const meter = (red: string, when: When = {}): ReadingSetup => ({
  quantity: "volts",
  red,
  black: "chassis",
  when,
});

/** A module with a sender, a pedal, a sensor of each feed, and a data line to another module. */
const signals = () =>
  withBattery()
    .module(
      "A1",
      {
        "1": "PWR",
        "2": "GND",
        "3": "TEMP",
        "4": "5V",
        "5": "POS",
        "6": "0V",
        "7": null,
        "8": null,
      },
      { sources: [{ between: ["4", "6"], volts: 5, ohms: 10 }] },
    )
    .module("A2", { "7": null })
    .part("fuse", "F1")
    .part("sender", "B1")
    .part("potentiometer", "R1")
    .part("sensor", "B2")
    .part("sensor", "B3")
    .part("lamp", "P1")
    .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1")
    .wire("A1:3 B1:1", "B1:2 GND1:1", "A1:4 R1:1", "R1:W A1:5", "R1:2 A1:6", "A1:7 A2:7")
    .wire("F1:2 B2:+", "B2:- GND1:1", "B2:S A1:8", "A1:4 B3:+", "A1:6 B3:-")
    .wire("F1:2 P1:1", "P1:2 GND1:1");

test("a test lamp is refused on a sender's, sensor's, potentiometer's and data line, with what is on it", () => {
  for (const [probe, on] of [
    ["B1:1", "sender B1"],
    ["A1:3", "sender B1"],
    ["R1:W", "potentiometer R1"],
    ["R1:1", "A1 feeds it"],
    ["A1:6", "R1"],
    ["B2:S", "sensor B2"],
    ["B3:+", "A1 feeds it"],
    ["A2:7", "A1 to A2"],
  ] as const) {
    const refused = at(signals(), lamp(probe));
    expect(refused.invalid, probe).toContain("No test lamp");
    expect(refused, probe).toMatchObject({ predicted: null, low: null, floating: false });
    if (probe !== "A1:6" && probe !== "R1:1" && probe !== "B3:+")
      expect(refused.invalid).toContain(on);
    // from plus to the line just as well
    expect(at(signals(), lamp("battery+", {}, probe)).invalid, probe).toContain("No test lamp");
  }
});

test("the meter alone may go there, and a lamp to feeds and grounds that a sensor only taps", () => {
  for (const probe of ["B1:1", "R1:W", "B2:S"]) {
    expect(at(signals(), meter(probe)).invalid, probe).toBeNull();
  }
  for (const probe of ["B2:+", "F1:2"]) {
    expect(at(signals(), lamp(probe)).invalid, probe).toBeNull();
    expect(at(signals(), lamp(probe)).caution, probe).toBeNull();
  }
  expect(at(signals(), lamp("battery+", {}, "B1:2")).invalid).toBeNull();
  expect(at(signals(), lamp("battery+", {}, "B2:-")).invalid).toBeNull();
});

test("on the bare wire, with all that it belongs to off, a lamp is only cautioned against", () => {
  const bare = at(signals(), lamp("A2:7", { unplugged: ["A1", "A2"] }));
  // A2:7 is the module's own pin: the harness is asked for by the wire's other end
  expect(bare.invalid).toContain("No test lamp");
  const circuit = signals();
  circuit.job.plugs.push({ id: "X1", side: "mating", cavities: [{ mark: "7", at: [0, 0] }] });
  circuit.job.links.push({ pin: "A1:7", cavity: "X1:7" });
  const off = at(circuit, lamp("X1:7", { unplugged: ["A1", "A2"] }));
  expect(off.invalid).toBeNull();
  expect(off.caution).toContain("signal line when all is plugged in");
  expect(at(circuit, lamp("X1:7", { unplugged: ["A1"] })).invalid).toContain("No test lamp");
});

test("where only a word says signal, or a contact may feed the line, it is a caution", () => {
  const circuit = withBattery()
    .module("A1", { "1": "CAN H", "2": null })
    .part("lamp", "P1")
    .contact("S1", "operator")
    .part("sensor", "B1")
    .wire("A1:1 P1:1", "P1:2 GND1:1", "G1:+ S1:1", "S1:2 A1:2", "S1:2 B1:S");
  for (const probe of ["P1:1", "S1:2"]) {
    const found = at(circuit, lamp(probe, { unplugged: ["A1"] }));
    expect(found.invalid, probe).toBeNull();
    expect(found.caution, probe).toMatch(/may be a signal line/);
  }
});

test("one module may feed another: where a word says so a lamp is not refused", () => {
  const fed = (word: string | null) =>
    at(
      withBattery().module("A1", { "1": null }).module("A2", { "1": word }).wire("A1:1 A2:1"),
      lamp("A2:1"),
    );
  expect(fed("PWR").invalid).toBeNull();
  expect(fed("PWR").caution).toContain("may be a signal line");
  expect(fed(null).invalid).toContain("No test lamp");
  expect(fed("CAN L").invalid).toContain("No test lamp");
});

test("an ammeter across a source is a dead short, and named as that", () => {
  const circuit = withBattery().part("fuse", "F1").wire("G1:+ F1:1");
  const amps = (red: string, black: string, when: When = {}): ReadingSetup => ({
    quantity: "amps",
    red,
    black,
    when,
  });
  expect(at(circuit, amps("battery+", "battery-")).invalid).toContain("Across G1");
  expect(at(circuit, amps("chassis", "F1:1")).invalid).toContain("dead short");
  expect(at(circuit, amps("F1:1", "F1:2")).invalid).toContain("belongs in the place");
});

test("a battery's own resistance is not for an ohmmeter, not even on the bench", () => {
  const bench: ReadingSetup = {
    quantity: "ohms",
    red: "G1:+",
    black: "G1:-",
    when: { removed: ["G1"] },
  };
  expect(at(withBattery(), bench).invalid).toContain("is a source");
  expect(at(withBattery(), { ...bench, when: {} }).invalid).toContain("live");
});

test("ohms with the module plugged in are cautioned against", () => {
  const circuit = withBattery()
    .module(
      "A1",
      { "1": null, "2": null },
      {
        behaviour: { paths: [], loads: [{ between: ["1", "2"], ohms: 500 }] },
      },
    )
    .part("solenoid", "M1", { ohms: 26 })
    .wire("A1:1 M1:1", "M1:2 GND1:1", "A1:2 GND1:1");
  circuit.job.plugs.push({ id: "X1", side: "mating", cavities: [{ mark: "1", at: [0, 0] }] });
  circuit.job.links.push({ pin: "A1:1", cavity: "X1:1" });
  const ohms = (when: When): ReadingSetup => ({
    quantity: "ohms",
    red: "X1:1",
    black: "chassis",
    when: { ...when, removed: ["G1"] },
  });
  expect(at(circuit, ohms({})).caution).toContain("A1 is plugged in");
  expect(at(circuit, ohms({ unplugged: ["A1"] })).caution).toBeNull();
});

test("a floating point has no firm value and says what ghost volts are worth", () => {
  const circuit = withBattery().contact("S1", "operator").wire("G1:+ S1:1");
  const found = at(circuit, meter("S1:2"));
  expect(found).toMatchObject({ predicted: null, low: null, high: null, floating: true });
  expect(found.caution).toContain("ghost volts");
});

test("what only a blocking diode ties floats no more than what it feeds", () => {
  const circuit = withBattery()
    .part("diode", "R1")
    .part("splice", "SP1")
    .part("diode", "R2")
    .part("splice", "SP2")
    .wire("G1:+ R1:A", "R1:K SP1:1", "G1:+ R2:K", "R2:A SP2:1");
  // a meter's microamps through the diode: 25.2 V less about 0.7 V
  expect(at(circuit, meter("SP1:1")).predicted).toBeCloseTo(24.5, 1);
  expect(at(circuit, meter("SP2:1")).floating).toBe(true);
});

test("a drop with no current flowing proves nothing, and says so", () => {
  const circuit = withBattery()
    .contact("S1", "operator")
    .part("heater", "E1", { ohms: 5 })
    .wire("G1:+ S1:1", "S1:2 E1:1", "E1:2 GND1:1");
  const drop = (when: When): ReadingSetup => ({
    quantity: "drop",
    red: "E1:2",
    black: "battery-",
    when,
  });
  expect(at(circuit, drop({})).caution).toContain("until the load is on");
  expect(at(circuit, drop({ switches: { S1: "worked" } })).caution).toBeNull();
});

test("a refused lamp still says what it would move", () => {
  const circuit = withBattery()
    .module("A1", { "1": null })
    .part("sender", "B1", { ohmsMin: 10, ohmsMax: 20 })
    .part("relay", "K1")
    .wire("G1:+ K1:86", "K1:85 B1:1", "K1:85 A1:1");
  const setup = lamp("B1:1", { unplugged: ["A1"] });
  expect(at(circuit, setup).invalid).toContain("No test lamp");
  expect(movesOf(circuit.job, "machine1", setup)?.moves).toEqual(["K1"]);
});
