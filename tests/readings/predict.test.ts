import { freeze, produce } from "immer";
import { expect, test } from "vitest";
import type { Reading, When } from "../../src/job/index.ts";
import { judgeReading, predict, type ReadingSetup } from "../../src/readings/index.ts";
import { CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const at = (builder: CircuitBuilder, setup: ReadingSetup) =>
  predict(builder.job, "machine1", setup);
const volts = (red: string, when: When = {}, black = "chassis"): ReadingSetup => ({
  quantity: "volts",
  red,
  black,
  when,
});
const ohms = (red: string, black: string, when: When = {}): ReadingSetup => ({
  quantity: "ohms",
  red,
  black,
  when,
});
const judged = (builder: CircuitBuilder, reading: Omit<Reading, "id">) =>
  judgeReading(builder.job, "machine1", { id: "R1", ...reading });

/** A key-fed module with a button, a solenoid and a ground, on an eight-way plug. */
function plugged() {
  const circuit = withBattery()
    .part("fuse", "F1")
    .key("S1")
    .contact("S2", "operator")
    .module("A1", { "1": "PWR", "2": "GND", "3": "SW", "4": "OUT", "5": null })
    .part("solenoid", "M1", { ohms: 26 })
    .part("ground", "GND2")
    .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 A1:1", "A1:2 GND2:1")
    .wire("S1:15 S2:1", "S2:2 A1:3", "A1:4 M1:1", "M1:2 GND2:1");
  circuit.job.plugs.push({
    id: "X1",
    side: "mating",
    cavities: ["1", "2", "3", "4", "5"].map((mark) => ({ mark, at: [0, 0] })),
  });
  for (const mark of ["1", "2", "3", "4", "5"]) {
    circuit.job.links.push({ pin: `A1:${mark}`, cavity: `X1:${mark}` });
  }
  return circuit;
}
const off: When = { unplugged: ["A1"] };
const run: When = { unplugged: ["A1"], switches: { S1: "run" } };

test("a switched feed shows volts in run and nothing at rest", () => {
  const fed = at(plugged(), volts("X1:1", run));
  expect(fed.predicted).toBeCloseTo(25.2, 2);
  expect(fed.low ?? 0).toBeGreaterThan(23);
  expect(fed.high ?? 99).toBeLessThan(28);
  expect(at(plugged(), volts("X1:1", off)).floating).toBe(true);
});

test("an edit of the diagram, or of what one machine has otherwise, is felt at once", () => {
  const before = freeze(plugged().job, true);
  const feed = volts("X1:1", run);
  expect(predict(before, "machine1", feed).predicted).toBeCloseTo(25.2, 2);
  expect(predict(before, "machine1", feed)).toBe(predict(before, "machine1", feed));
  const cut = produce(before, (draft) => {
    draft.diagram.wires = draft.diagram.wires.filter(({ from }) => from !== "F1:2");
  });
  expect(predict(cut, "machine1", feed).floating).toBe(true);
  const retrofit = produce(before, (draft) => {
    const [machine] = draft.machines;
    if (machine) machine.changes = [{ without: ["F1"], note: "fuse holder cut out" }];
  });
  expect(predict(retrofit, "machine1", feed).floating).toBe(true);
  expect(predict(before, "machine1", feed).predicted).toBeCloseTo(25.2, 2);
});

test("signs are red over black", () => {
  expect(at(plugged(), volts("chassis", run, "X1:1")).predicted).toBeCloseTo(-25.2, 2);
});

test("a point that only the meter holds floats, and a test lamp takes it to nothing", () => {
  const floating = at(plugged(), volts("X1:3", run));
  expect(floating).toMatchObject({ floating: true, predicted: null, low: null, high: null });
  const lit = at(plugged(), { ...volts("X1:3", run), with: "test-lamp" });
  expect(lit).toMatchObject({ floating: false, predicted: 0 });
});

test("a load to ground reads its ohms, a ground next to nothing, an open pin OL", () => {
  const dead: When = { ...off, removed: ["G1"] };
  const coil = at(plugged(), ohms("X1:4", "chassis", dead));
  expect(coil.predicted).toBeCloseTo(26, 3);
  // winding tolerance and temperature -20 to +40 % (common practice), wires of up to 0.5 Ω each
  expect(coil.low ?? 99).toBeLessThanOrEqual(26 * 0.8);
  expect(coil.high ?? 0).toBeGreaterThanOrEqual(26 * 1.4);
  const ground = at(plugged(), ohms("X1:2", "chassis", dead));
  expect(ground.predicted).toBe(0);
  expect(ground.high ?? 99).toBeLessThan(2);
  expect(at(plugged(), ohms("X1:5", "chassis", dead))).toMatchObject({
    predicted: "OL",
    low: null,
  });
});

test("ohms to chassis are sound with the key off, unsound where volts stand or current flows", () => {
  expect(at(plugged(), ohms("X1:4", "chassis", off)).invalid).toBeNull();
  expect(at(plugged(), ohms("X1:1", "chassis", run)).invalid).toContain("live");
  expect(at(plugged(), ohms("F1:1", "F1:2", off)).invalid).toContain("live");
  const carrying = withBattery()
    .part("heater", "E1", { ohms: 10 })
    .part("splice", "SP1")
    .wire("G1:+ E1:1", "E1:2 SP1:1");
  carrying.job.diagram.wires.push({ id: "W9", from: "SP1:1", to: "GND1:1", mm2: 1, metres: 5 });
  expect(at(carrying, ohms("SP1:1", "chassis")).invalid).toContain("live");
});

test("a removed part is measured on its own, its place by the harness", () => {
  const relay = withBattery()
    .part("relay", "K1", { coilOhms: 320 })
    .wire("G1:+ K1:86", "K1:85 GND1:1");
  const out: When = { removed: ["K1"] };
  expect(at(relay, ohms("K1:85", "K1:86", out)).predicted).toBeCloseTo(320, 3);
  expect(at(relay, volts("K1:86", out)).predicted).toBeCloseTo(25.2, 3);
  expect(at(relay, ohms("K1:85", "chassis", out)).predicted).toBe(0);
});

test("a diode is not for an ohmmeter", () => {
  const circuit = new CircuitBuilder(24)
    .part("diode", "R1")
    .part("splice", "SP1")
    .wire("R1:A SP1:1");
  expect(at(circuit, ohms("R1:A", "R1:K")).uncertain).toContain("diode");
});

test("amps go through the meter in the place of a removed part or an opened joint, signed", () => {
  const circuit = plugged();
  const inPlace = at(circuit, {
    quantity: "amps",
    red: "F1:1",
    black: "F1:2",
    when: { ...run, removed: ["F1"] },
  });
  expect(inPlace.predicted).toBe(0);
  const heater = withBattery()
    .part("fuse", "F1")
    .part("heater", "E1", { ohms: 10 })
    .wire("G1:+ F1:1", "F1:2 E1:1", "E1:2 GND1:1");
  const amps = (red: string, black: string, when: When) =>
    at(heater, { quantity: "amps", red, black, when });
  expect(amps("F1:1", "F1:2", { removed: ["F1"] }).predicted).toBeCloseTo(25.2 / 10.03, 2);
  expect(amps("F1:2", "F1:1", { removed: ["F1"] }).predicted).toBeCloseTo(-25.2 / 10.03, 2);
  expect(amps("battery+", "chassis", {}).invalid).toContain("short");
  expect(amps("F1:1", "F1:2", {}).invalid).toContain("short");
  expect(amps("battery+", "battery-", { removed: ["F1"] }).invalid).toContain("short");
  expect(amps("F1:1", "chassis", { removed: ["F1"] }).invalid).toContain("short");
  // in the place of the load itself it is as good as a short
  expect(amps("E1:1", "E1:2", { removed: ["E1"] }).invalid).toContain("beyond the meter");
});

test("an opened plug's two halves are a place for an ammeter", () => {
  const circuit = plugged();
  const module = circuit.job.diagram.parts.find(({ id }) => id === "A1");
  if (module?.kind !== "module") throw new Error("no module");
  module.behaviour = { paths: [], loads: [{ between: ["1", "2"], ohms: 240 }] };
  // the ground pin stays open with the plug, so nothing flows; the place is right all the same
  const found = at(circuit, { quantity: "amps", red: "X1:1", black: "A1:1", when: run });
  expect(found.invalid).toBeNull();
  expect(found.predicted).toBe(0);
});

test("a probe on nothing is named as that", () => {
  expect(at(plugged(), volts("A9:1")).invalid).toContain("A9:1");
  expect(at(plugged(), volts("X1:77")).invalid).toContain("X1:77");
  expect(at(new CircuitBuilder(24), volts("battery+")).invalid).toContain("battery");
  const two = withBattery().part("battery", "G2").wire("G2:- GND1:1");
  expect(at(two, volts("battery+")).invalid).toContain("2 batteries");
  expect(at(two, volts("G2:+")).invalid).toBeNull();
});

test("a position that a switch has not, and OL for volts, are not readings", () => {
  expect(at(plugged(), volts("X1:1", { switches: { S1: "warp" } })).invalid).toContain("warp");
  const circuit = plugged();
  expect(judged(circuit, { ...volts("X1:1", run), value: "OL" }).verdict).toBe("invalid");
  expect(judged(circuit, { ...volts("X1:1", run), value: 4000 }).verdict).toBe("invalid");
  expect(judged(circuit, { ...ohms("X1:4", "chassis", off), value: -3 }).verdict).toBe("invalid");
});

test("what an unknown module drives is not asserted, beside it all is", () => {
  const circuit = plugged();
  const plug = at(circuit, volts("X1:4", { switches: { S1: "run" } }));
  expect(plug).toMatchObject({ predicted: null, floating: false, invalid: null });
  expect(plug.uncertain).toContain("A1");
  expect(at(circuit, volts("X1:1", { switches: { S1: "run" } })).predicted).toBeCloseTo(25.2, 2);
  expect(at(circuit, volts("X1:4", run)).predicted).toBe(0);
});

test("what hangs on a line that goes on untraced is not asserted", () => {
  const circuit = withBattery()
    .part("offpage", "X9", { label: "to cab" })
    .part("splice", "SP1")
    .part("lamp", "P1")
    .wire("X9:1 SP1:1", "SP1:1 P1:1", "P1:2 GND1:1");
  expect(at(circuit, volts("SP1:1")).uncertain).toContain("not traced");
  expect(at(circuit, volts("battery+")).uncertain).toBeNull();
});

test("an unknown pull-up cannot fake a relay: what hangs on it is not asserted either", () => {
  const circuit = withBattery()
    .module("A1", { "1": null, "2": null })
    .part("relay", "K1")
    .part("heater", "E1", { ohms: 10 })
    .wire("G1:+ K1:86", "K1:85 A1:1", "A1:2 GND1:1", "G1:+ K1:30", "K1:87 E1:1", "E1:2 GND1:1");
  expect(at(circuit, volts("E1:1")).uncertain).toContain("K1");
  expect(at(circuit, volts("E1:1", { unplugged: ["A1"] })).predicted).toBe(0);
});

test("wires of which nothing is said may drop up to half an ohm's volts each, and no more", () => {
  // job format: 0 Ω for roles, 0 to 0.5 Ω for bands
  const circuit = withBattery(24)
    .part("heater", "E1", { ohms: 12 })
    .wire("G1:+ E1:1", "E1:2 GND1:1");
  const found = at(circuit, { quantity: "drop", red: "battery+", black: "E1:1", when: {} });
  expect(found.predicted).toBe(0);
  const amps = 26.5 / (12 * 0.8 + 0.5);
  expect(found.high ?? 0).toBeGreaterThan(0.9);
  expect(found.high ?? 99).toBeLessThan(0.5 * amps + 0.1);
});

test("a known wire's drop under load is told within a few per cent", () => {
  const circuit = withBattery(24).part("heater", "E1", { ohms: 12 });
  const wire = { mm2: 1, metres: 10 };
  circuit.job.diagram.wires.push(
    { id: "Wa", from: "G1:+", to: "E1:1", ...wire },
    { id: "Wb", from: "E1:2", to: "GND1:1", ...wire },
  );
  const found = at(circuit, { quantity: "drop", red: "battery+", black: "E1:1", when: {} });
  // IEC 60228 class 5: 0.195 Ω a wire
  expect(found.predicted).toBeCloseTo((25.2 * 0.195) / (12 + 0.39 + 0.01), 3);
  expect(found.low ?? 0).toBeGreaterThan(0.18);
  expect(found.high ?? 9).toBeLessThan(0.75);
});

test("the band holds every machine that is within its own limits", () => {
  // a divider: the meter between two loads, each -20 % to +40 %
  const circuit = withBattery(24)
    .part("solenoid", "M1", { ohms: 30 })
    .part("solenoid", "M2", { ohms: 30 })
    .wire("G1:+ M1:1", "M1:2 M2:1", "M2:2 GND1:1");
  const found = at(circuit, volts("M2:1"));
  expect(found.predicted).toBeCloseTo(12.6, 2);
  expect(found.low ?? 99).toBeLessThanOrEqual((23.7 * 0.8) / (0.8 + 1.4));
  expect(found.high ?? 0).toBeGreaterThanOrEqual((26.4 * 1.4) / (0.8 + 1.4));
});

test("a potentiometer's wiper may stand anywhere, its track may not", () => {
  const circuit = withBattery(24)
    .part("potentiometer", "R1", { ohms: 5000 })
    .wire("G1:+ R1:1", "R1:2 GND1:1");
  const wiper = at(circuit, volts("R1:W"));
  expect(wiper.low ?? 9).toBeLessThan(0.1);
  expect(wiper.high ?? 0).toBeGreaterThan(25);
  const track = at(circuit, ohms("R1:1", "R1:2", { removed: ["R1"] }));
  expect(track.predicted).toBeCloseTo(5000, 0);
  expect(track.low ?? 0).toBeGreaterThan(4500);
});

test("a sender reads anything in its range", () => {
  const circuit = withBattery(12)
    .part("sender", "B1", { ohmsMin: 10, ohmsMax: 180 })
    .wire("B1:2 GND1:1");
  const found = at(circuit, ohms("B1:1", "chassis"));
  expect(found.low ?? 99).toBeLessThanOrEqual(10);
  expect(found.high ?? 0).toBeGreaterThanOrEqual(180);
});

test("readings are inside or outside the band; a floating point is not comparable", () => {
  const circuit = plugged();
  const dead: When = { ...off, removed: ["G1"] };
  expect(judged(circuit, { ...volts("X1:1", run), value: 24.6 }).verdict).toBe("inside");
  expect(judged(circuit, { ...volts("X1:1", run), value: 0 }).verdict).toBe("outside");
  expect(judged(circuit, { ...volts("X1:3", run), value: 3.1 }).verdict).toBe("not-comparable");
  expect(judged(circuit, { ...ohms("X1:4", "chassis", dead), value: "OL" }).verdict).toBe(
    "outside",
  );
  expect(judged(circuit, { ...ohms("X1:5", "chassis", dead), value: "OL" }).verdict).toBe("inside");
  // circuits that should be unrelated read over 5,000 Ω (US Army TM 5-3805-291-23-1)
  expect(judged(circuit, { ...ohms("X1:5", "chassis", dead), value: 6000 }).verdict).toBe("inside");
  expect(judged(circuit, { ...ohms("X1:5", "chassis", dead), value: 300 }).verdict).toBe("outside");
});

test("a charging machine's battery reads the alternator's volts", () => {
  const circuit = withBattery(24).part("alternator", "G2").wire("G2:B+ G1:+", "G2:E GND1:1");
  const found = at(circuit, { ...volts("battery+"), when: { engine: "running" } });
  expect(found.low ?? 99).toBeLessThan(27.6);
  expect(found.high ?? 0).toBeGreaterThan(28.8);
  expect(found.low ?? 0).toBeGreaterThan(24.5);
});

test("of a relay that pulls in on one healthy machine and not on another nothing is asserted", () => {
  const behind = (coilVolts: number) => {
    const pullIn = 0.75;
    // a resistor before the coil leaves it these volts of 25.2
    const ohms = 100 * (25.2 / coilVolts - 1);
    const circuit = withBattery(24)
      .part("resistor", "R1", { ohms })
      .part("relay", "K1", { coilOhms: 100, pullIn })
      .part("heater", "E1", { ohms: 10 })
      .wire("G1:+ R1:1", "R1:2 K1:86", "K1:85 GND1:1")
      .wire("G1:+ K1:30", "K1:87 E1:1", "E1:2 GND1:1");
    return at(circuit, volts("E1:1"));
  };
  expect(behind(18.5).uncertain).toContain("whether K1 pulls in");
  expect(behind(17).uncertain).toContain("whether K1 pulls in");
  expect(behind(24).predicted).toBeCloseTo(25.2, 1);
  expect(behind(10).predicted).toBe(0);
});
