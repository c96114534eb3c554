import { expect, test } from "vitest";
import { type Job, type Reading, ROLE_NAMES, type When } from "../../src/job/index.ts";
import { expectedAt, meterEvidence, presenceContradicts } from "../../src/readings/index.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const off: When = { unplugged: ["A1"] };
const dead: When = { unplugged: ["A1"], removed: ["G1"] };

function withPlug(circuit: CircuitBuilder, ...pins: readonly string[]): Job {
  circuit.job.plugs.push({
    id: "X1",
    side: "mating",
    cavities: pins.map((mark) => ({ mark, at: [0, 0] })),
  });
  for (const mark of pins) circuit.job.links.push({ pin: `A1:${mark}`, cavity: `X1:${mark}` });
  return circuit.job;
}

/** Feed on 1, ground on 2, button on 3, solenoid on 4. */
const machine = () =>
  withPlug(
    withBattery()
      .part("fuse", "F1")
      .key("S1")
      .contact("S2", "operator")
      .module("A1", { "1": null, "2": null, "3": null, "4": null })
      .part("solenoid", "M1", { ohms: 26 })
      .part("ground", "GND2")
      .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 A1:1", "A1:2 GND2:1")
      .wire("S1:15 S2:1", "S2:2 A1:3", "A1:4 M1:1", "M1:2 GND2:1"),
    "1",
    "2",
    "3",
    "4",
  );

const reading = (fields: Partial<Reading>): Reading => ({
  id: "R1",
  quantity: "volts",
  red: "X1:1",
  black: "chassis",
  value: 24,
  when: off,
  ...fields,
});
const lamp = (fields: Partial<Reading>) => reading({ with: "test-lamp", ...fields });

function evidence(job: Job, cavity: string, ...readings: Reading[]) {
  job.machines[0]?.readings.push(...readings);
  return meterEvidence(job, "machine1", cavity);
}

test("no reading, no volts, OL and open-circuit volts prove no role", () => {
  for (const nothing of [
    reading({ value: 0 }),
    reading({ value: 24.9 }),
    reading({ quantity: "ohms", value: "OL", when: dead }),
    lamp({ value: 0 }),
    lamp({ value: 24.6, when: {} }),
  ]) {
    expect(evidence(machine(), "X1:1", nothing)).toMatchObject({
      fits: ROLE_NAMES,
      confirmedBy: [],
    });
  }
});

test("volts that hold under a test lamp prove a feed and rule out a ground", () => {
  const { fits, confirmedBy } = evidence(
    machine(),
    "X1:1",
    lamp({ value: 24.6, when: { ...off, switches: { S1: "run" } } }),
  );
  expect(confirmedBy).toEqual(["R1"]);
  expect(fits).toEqual(expect.arrayContaining(["supply", "switched-supply", "input"]));
  expect(fits).not.toContain("ground");
  expect(fits).not.toContain("unused");
});

test("a solid return proves a way to ground, and a supply only where a bus could look the same", () => {
  const ground = reading({ quantity: "ohms", red: "X1:2", value: 0.3, when: dead });
  const alone = evidence(machine(), "X1:2", ground);
  expect(alone.confirmedBy).toEqual(["R1"]);
  expect(alone.fits).toContain("ground");
  expect(alone.fits).not.toContain("supply");
  const loaded = machine();
  loaded.diagram.parts.push({
    kind: "lamp",
    id: "P1",
    sheet: "sheet1",
    at: [0, 0],
    turn: 0,
    watts: 70,
  });
  loaded.diagram.wires.push(
    { id: "Wa", from: "F1:2", to: "P1:1" },
    { id: "Wb", from: "P1:2", to: "GND2:1" },
  );
  expect(evidence(loaded, "X1:2", ground).fits).toContain("supply");
});

test("a feed in one state and a return in another leave only what is both", () => {
  const { fits } = evidence(
    machine(),
    "X1:3",
    lamp({ red: "X1:3", value: 24 }),
    reading({ id: "R2", quantity: "ohms", red: "X1:3", value: 0.2, when: dead }),
  );
  expect([...fits].sort()).toEqual(["input", "output", "signal"]);
});

test("ohms on a live circuit prove nothing", () => {
  const live = reading({
    quantity: "ohms",
    red: "X1:1",
    value: 0.4,
    when: { ...off, switches: { S1: "run" } },
  });
  expect(evidence(machine(), "X1:1", live).confirmedBy).toEqual([]);
});

const contradicts = (job: Job, found: Reading, role: "ground" | "supply" | "switched-supply") =>
  presenceContradicts(job, "machine1", found, role);

test("volts that hold under load contradict the word ground, open-circuit volts do not", () => {
  const when = { ...off, switches: { S1: "run" } };
  expect(contradicts(machine(), lamp({ value: 24.5, when }), "ground")).toContain("X1:1");
  expect(contradicts(machine(), reading({ value: 24.9, when }), "ground")).toBeNull();
  expect(contradicts(machine(), lamp({ value: 24.5, when }), "supply")).toBeNull();
  expect(contradicts(machine(), lamp({ value: 3, when }), "ground")).toBeNull();
  // plugged in, the module itself may drive it
  expect(contradicts(machine(), lamp({ value: 24.5, when: {} }), "ground")).toBeNull();
});

test("probes the other way round say the same", () => {
  const turned = lamp({ red: "chassis", black: "X1:1", value: -24.5 });
  expect(contradicts(machine(), turned, "ground")).not.toBeNull();
  expect(contradicts(machine(), { ...turned, value: 24.5 }, "ground")).toBeNull();
});

test("a solid return contradicts the word supply", () => {
  const ohms = reading({ quantity: "ohms", red: "X1:2", value: 0.2, when: dead });
  expect(contradicts(machine(), ohms, "supply")).toContain("X1:2");
  expect(contradicts(machine(), ohms, "ground")).toBeNull();
  const lit = lamp({ red: "battery+", black: "X1:2", value: 24.8 });
  expect(contradicts(machine(), lit, "switched-supply")).toContain("X1:2");
  expect(contradicts(machine(), { ...ohms, value: "OL" }, "supply")).toBeNull();
  expect(contradicts(machine(), { ...ohms, value: 26 }, "supply")).toBeNull();
});

test("a dead bus that returns current through its lamps contradicts no supply", () => {
  const job = machine();
  job.diagram.parts.push({
    kind: "lamp",
    id: "P1",
    sheet: "sheet1",
    at: [0, 0],
    turn: 0,
    watts: 70,
  });
  job.diagram.wires.push(
    { id: "Wa", from: "S1:15", to: "P1:1" },
    { id: "Wb", from: "P1:2", to: "GND2:1" },
  );
  // 24 V · 24 V / 70 W = 8 Ω hot, 0.8 Ω cold
  const ohms = reading({ quantity: "ohms", red: "X1:1", value: 0.8, when: dead });
  expect(contradicts(job, ohms, "switched-supply")).toBeNull();
});

test("a bad ground that its loads pull up to full volts contradicts no ground", () => {
  const job = withPlug(
    withBattery()
      .module("A1", { "2": "GND" })
      .part("splice", "SP1")
      .part("lamp", "P1", { watts: 70 })
      .part("ground", "GND2")
      .wire("A1:2 SP1:1", "SP1:1 GND2:1", "G1:+ P1:1", "P1:2 SP1:1"),
    "2",
  );
  expect(contradicts(job, lamp({ red: "X1:2", value: 23.8 }), "ground")).toBeNull();
});

test("each role is ruled out by the readings that do it, with the reason", () => {
  const when = { ...off, switches: { S1: "run" } };
  const found = evidence(
    machine(),
    "X1:1",
    reading({ id: "R1", value: 24.9, when }),
    lamp({ id: "R2", value: 24.6, when }),
    lamp({ id: "R3", value: 0 }),
    lamp({ id: "R4", value: 24.5, when }),
  );
  const ground = found.ruledOut.find(({ role }) => role === "ground");
  expect(ground?.by).toEqual(["R2", "R4"]);
  expect(ground?.why).toContain("under load");
  expect(found.ruledOut.map(({ role }) => role)).toEqual(
    ROLE_NAMES.filter((role) => !found.fits.includes(role)),
  );
});

test("full volts with the key off rule out no switched supply and no input: a contact may stick", () => {
  const { fits } = evidence(machine(), "X1:1", lamp({ value: 24.6 }));
  expect(fits).toEqual(expect.arrayContaining(["supply", "switched-supply", "input", "output"]));
  expect(fits).not.toContain("ground");
});

test("a voltage that follows a switch between feed and ground leaves no ground", () => {
  const job = withPlug(
    withBattery()
      .module("A1", { "3": null })
      .part("switch", "S1", {
        positions: ["up", "down"],
        control: "operator",
        contacts: [
          { between: ["C", "U"], closedIn: ["up"] },
          { between: ["C", "D"], closedIn: ["down"] },
        ],
      })
      .part("fuse", "F1")
      .part("lamp", "P1", { watts: 2 })
      .wire("G1:+ F1:1", "F1:2 S1:U", "S1:D GND1:1", "S1:C A1:3", "F1:2 P1:1", "P1:2 GND1:1"),
    "3",
  );
  const fed = lamp({ red: "X1:3", value: 24.5, when: { ...off, switches: { S1: "up" } } });
  const back = reading({
    id: "R2",
    quantity: "ohms",
    red: "X1:3",
    value: 0.2,
    when: { ...dead, switches: { S1: "down" } },
  });
  expect(evidence(job, "X1:3", fed, back).fits).not.toContain("ground");
  // the drawing grounds this very feed by a contact: less is not said
  expect(evidence(job, "X1:3").fits).toContain("supply");
});

/** A ground on the cab with a big lamp beside it, strapped to the frame. */
const cab = () =>
  withPlug(
    withBattery()
      .module("A1", { "2": "GND" })
      .part("ground", "GND2", { place: "cab" })
      .part("ground", "GND3", { place: "cab" })
      .part("ground", "GND4", { place: "cab" })
      .part("lamp", "P1", { watts: 70 })
      .wire("A1:2 GND2:1", "GND3:1 GND1:1", "G1:+ P1:1", "P1:2 GND4:1"),
    "2",
  );

test("a strap that is off lets what else is grounded on the cab pull its grounds up", () => {
  const lit = lamp({ red: "X1:2", value: 23.8 });
  expect(contradicts(cab(), lit, "ground")).toBeNull();
  expect(evidence(cab(), "X1:2", lit).fits).toContain("ground");
  // the lamp's own ground is beyond where the other lead is
  const there = { ...lit, black: "GND3:1" };
  expect(contradicts(cab(), there, "ground")).not.toBeNull();
});

test("a lamp on an interlock's way to ground holds full volts while the contact is open", () => {
  const job = withPlug(
    withBattery()
      .module("A1", { "2": "GND" })
      .contact("S1", "interlock")
      .part("lamp", "P1", { watts: 70 })
      .wire("A1:2 S1:1", "S1:2 GND1:1", "G1:+ P1:1", "P1:2 S1:1"),
    "2",
  );
  const lit = lamp({ red: "X1:2", value: 23.9 });
  expect(contradicts(job, lit, "ground")).toBeNull();
  const { fits } = evidence(job, "X1:2", lit);
  expect(fits).toContain("switched-ground");
  expect(fits).not.toContain("ground");
});

test("a reversing relay does not make its feed a ground", () => {
  const job = withPlug(
    withBattery()
      .module("A1", { "1": "GND" })
      .part("fuse", "F1")
      .part("relay", "K1")
      .part("motor", "M1", { ohms: 2 })
      .wire("G1:+ F1:1", "F1:2 A1:1", "F1:2 K1:87", "K1:87a GND1:1", "K1:30 M1:1", "M1:2 GND1:1"),
    "1",
  );
  expect(contradicts(job, lamp({ value: 24.4 }), "ground")).not.toBeNull();
});

test("with its plus earthed a machine's ground is its feed", () => {
  const circuit = withBattery();
  circuit.job.diagram.wires = [];
  const job = withPlug(
    circuit.module("A1", { "1": "GND" }).part("ground", "GND2").wire("G1:+ GND1:1", "A1:1 GND2:1"),
    "1",
  );
  const lit = lamp({ black: "battery-", value: 24.6 });
  expect(contradicts(job, lit, "ground")).toBeNull();
  expect(evidence(job, "X1:1", lit).fits).toContain("ground");
});

test("plugged in nothing is ruled out, at a cavity that is not tied yet as little as elsewhere", () => {
  const job = machine();
  job.plugs[0]?.cavities.push({ mark: "9", at: [0, 0] });
  const at = (when: When) =>
    evidence(job, "X1:9", lamp({ red: "X1:9", value: 24.6, when })).ruledOut;
  expect(at({})).toEqual([]);
  expect(evidence(machine(), "X1:1", lamp({ value: 24.6, when: {} })).ruledOut).toEqual([]);
});

test("what a stand-in may feed proves nothing of the harness", () => {
  const job = { ...machine(), standIns: [{ id: "ST1", kind: "jumper", replaces: "A1", map: [] }] };
  const lit = lamp({ value: 24.6, when: { ...off, standIn: "ST1" } });
  expect(evidence(job as Job, "X1:1", lit).confirmedBy).toEqual([]);
});

test("a solid return where a feed is drawn leaves the supply possible: a chafed wire looks the same", () => {
  const ohms = reading({ quantity: "ohms", value: 0.1, when: dead });
  const { fits, ruledOut } = evidence(machine(), "X1:1", ohms);
  expect(fits).toEqual(expect.arrayContaining(["supply", "switched-supply", "ground"]));
  expect(ruledOut.map(({ role }) => role)).toEqual(
    ROLE_NAMES.filter((role) => role === "sensor-supply" || role === "unused"),
  );
});

test("a relay that only a live machine pulls in may hang a load on a dead feed", () => {
  // S1 off: its bus is dead, and K1, pulled in from elsewhere, hangs a big lamp on it
  const bus = (lampOn: "87" | "none") =>
    withPlug(
      withBattery()
        .part("fuse", "F1")
        .part("fuse", "F2")
        .key("S1")
        .part("relay", "K1")
        .part("lamp", "P1", { watts: 250 })
        .part("module", "A1", { pins: [{ id: "1" }, { id: "2" }] })
        .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 A1:1", "S1:15 K1:30", "P1:2 GND1:1")
        .wire("G1:+ F2:1", "F2:2 K1:86", "K1:85 GND1:1")
        .wire(...(lampOn === "87" ? ["K1:87 P1:1"] : ["S1:50 P1:1"])),
      "1",
      "2",
    );
  const lit = lamp({ red: "battery+", black: "X1:2", value: 25 });
  expect(evidence(bus("87"), "X1:2", lit).fits).toContain("switched-supply");
  expect(evidence(bus("none"), "X1:2", lit).confirmedBy).toEqual(["R1"]);
});

test("at a switched feed the loaded test in run comes first, and every offer is a sound reading", () => {
  const offers = expectedAt(machine(), "machine1", "X1:1");
  expect(offers[0]?.setup).toMatchObject({
    with: "test-lamp",
    when: { unplugged: ["A1"], switches: { S1: "run" } },
  });
  expect(offers[0]?.predicted).toBeGreaterThan(24);
  for (const pin of ["1", "2", "3", "4"]) {
    const some = expectedAt(machine(), "machine1", `X1:${pin}`);
    expect(some.length).toBeGreaterThan(0);
    for (const offer of some) {
      expect(offer.invalid).toBeNull();
      expect(offer.uncertain).toBeNull();
      expect(offer.setup.when.unplugged).toEqual(["A1"]);
      expect(offer.proves.length).toBeGreaterThan(20);
    }
  }
});

test("at a ground the loaded return and its ohms come before volts", () => {
  const [first, second] = expectedAt(machine(), "machine1", "X1:2");
  expect(first?.setup).toMatchObject({ red: "battery+", black: "X1:2", with: "test-lamp" });
  expect(second?.setup.quantity).toBe("ohms");
  expect(second?.predicted).toBe(0);
});

test("at a load its ohms come first", () => {
  const [first] = expectedAt(machine(), "machine1", "X1:4");
  expect(first?.setup.quantity).toBe("ohms");
  expect(first?.predicted).toBeCloseTo(26, 2);
});

test("at an input the state that changes it is among the offers", () => {
  const pressed = expectedAt(machine(), "machine1", "X1:3").filter(
    ({ setup }) => setup.when.switches?.S2 === "worked",
  );
  expect(pressed.some(({ predicted }) => typeof predicted === "number" && predicted > 24)).toBe(
    true,
  );
});

test("where nothing is tied there is nothing but an open circuit to expect", () => {
  const job = machine();
  job.plugs[0]?.cavities.push({ mark: "9", at: [0, 0] });
  const offers = expectedAt(job, "machine1", "X1:9");
  expect(offers.every(({ floating, predicted }) => floating || predicted === "OL")).toBe(true);
});
