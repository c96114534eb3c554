import { expect, test } from "vitest";
import { solveCircuit } from "../../src/circuit/index.ts";
import type { When } from "../../src/job/index.ts";
import { CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const ideal = () =>
  new CircuitBuilder(24)
    .part("battery", "G1", { volts: 24, ohms: 0 })
    .part("ground", "GND1")
    .wire("G1:- GND1:1");
const at = (builder: CircuitBuilder, when: When, red: string, black = "chassis") =>
  solveCircuit(builder.job, "machine1", when).volts(red, black);

test("a switch that is not named lies at rest, a relay follows its coil", () => {
  const circuit = ideal()
    .contact("S1", "operator")
    .part("relay", "K1", { coilOhms: 320 })
    .part("lamp", "P1")
    .part("lamp", "P2")
    .part("ground", "GND2")
    .wire("G1:+ S1:1", "S1:2 K1:86", "K1:85 GND2:1")
    .wire("G1:+ K1:30", "K1:87 P1:1", "K1:87a P2:1", "P1:2 GND2:1", "P2:2 GND2:1");
  expect(at(circuit, {}, "P1:1")).toBe(0);
  expect(at(circuit, {}, "P2:1")).toBeCloseTo(24, 3);
  const pressed = { switches: { S1: "worked" } };
  expect(at(circuit, pressed, "P1:1")).toBeCloseTo(24, 3);
  expect(at(circuit, pressed, "P2:1")).toBe(0);
  expect(solveCircuit(circuit.job, null, pressed).relays.get("K1")).toBe(true);
});

test("a relay that another relay feeds follows too", () => {
  const circuit = ideal()
    .contact("S1", "key")
    .part("relay", "K1")
    .part("relay", "K2")
    .wire("G1:+ S1:1", "S1:2 K1:86", "K1:85 GND1:1")
    .wire("G1:+ K1:30", "K1:87 K2:86", "K2:85 GND1:1");
  const relays = solveCircuit(circuit.job, null, { switches: { S1: "worked" } }).relays;
  expect([relays.get("K1"), relays.get("K2")]).toEqual([true, true]);
});

test("a relay that breaks its own coil chatters, is reported, and what hangs on it is not asserted", () => {
  const circuit = ideal()
    .part("relay", "K1")
    .part("lamp", "P1")
    .wire("G1:+ K1:30", "K1:87a K1:86", "K1:85 GND1:1")
    .wire("K1:87 P1:1", "P1:2 GND1:1");
  const solved = solveCircuit(circuit.job, null, {});
  expect(solved.oscillating).toEqual(["K1"]);
  expect(solved.dependsOn("P1:1", "chassis")).not.toEqual([]);
  expect(solved.dependsOn("battery+", "chassis")).toEqual([]);
});

test("a coil with a suppression diode the wrong way round does not pull in", () => {
  const circuit = (diodeCathode: "85" | "86") =>
    ideal()
      .part("resistor", "R1", { ohms: 5 })
      .part("relay", "K1", { diodeCathode })
      .wire("G1:+ R1:1", "R1:2 K1:86", "K1:85 GND1:1").job;
  expect(solveCircuit(circuit("86"), null, {}).relays.get("K1")).toBe(true);
  const backwards = solveCircuit(circuit("85"), null, {});
  expect(backwards.relays.get("K1")).toBe(false);
  expect(backwards.volts("K1:86", "K1:85")).toBeCloseTo(0.7, 1);
});

test("grounds of one place are one point, of different places only by a strap", () => {
  const unstrapped = () =>
    ideal()
      .part("ground", "GND2", { place: " Frame " })
      .part("ground", "GND3", { place: "cab" })
      .part("ground", "GND4", { place: "CAB" })
      .part("resistor", "R1", { ohms: 100 })
      .wire("G1:+ R1:1", "R1:2 GND3:1");
  const circuit = unstrapped();
  expect(at(circuit, {}, "GND2:1")).toBe(0);
  expect(at(circuit, {}, "GND3:1", "GND4:1")).toBe(0);
  // without a strap nothing holds the cab down: it stands at what R1 gives it
  expect(at(circuit, {}, "GND3:1")).toBeCloseTo(24, 6);
  expect(at(unstrapped().wire("GND4:1 GND1:1"), {}, "GND3:1")).toBe(0);
});

test("battery minus joins chassis only where drawn", () => {
  const circuit = new CircuitBuilder(24).part("battery", "G1").part("ground", "GND1");
  expect(at(circuit, {}, "battery+", "battery-")).toBeCloseTo(25.2, 6);
  expect(at(circuit, {}, "battery+")).toBeNull();
});

test("page ends join by label, trimmed and without case; a lone one is not asserted", () => {
  const circuit = ideal()
    .part("offpage", "X1", { label: " To Cab" })
    .part("offpage", "X2", { label: "to cab " })
    .part("offpage", "X3", { label: "elsewhere" })
    .part("resistor", "R1", { ohms: 100 })
    .wire("G1:+ X1:1", "X2:1 R1:1", "R1:2 X3:1");
  expect(at(circuit, {}, "R1:1")).toBeCloseTo(24, 6);
  const solved = solveCircuit(circuit.job, null, {});
  expect(solved.dependsOn("R1:1", "chassis")).toEqual([]);
  expect(solved.dependsOn("R1:2", "chassis")).toHaveLength(1);
});

test("a page end of which the user says what lies beyond acts as that", () => {
  const circuit = new CircuitBuilder(24)
    .part("offpage", "X1", { label: "feed", is: "supply" })
    .part("offpage", "X2", { label: "earth", is: "ground" })
    .part("resistor", "R1", { ohms: 100 })
    .wire("X1:1 R1:1", "R1:2 X2:1");
  expect(at(circuit, {}, "R1:1")).toBeGreaterThan(24);
  expect(at(circuit, {}, "R1:2")).toBe(0);
});

test("an unplugged inline plug opens every pin, and only there", () => {
  const circuit = ideal()
    .part("inline", "X9", { pins: [{ id: "1" }] })
    .part("resistor", "R1", { ohms: 100 })
    .wire("G1:+ X9:1", "X9:1 R1:1", "R1:2 GND1:1");
  expect(at(circuit, {}, "R1:1")).toBeCloseTo(24, 4);
  expect(at(circuit, { unplugged: ["X9"] }, "R1:1")).toBe(0);
  expect(at(circuit, { unplugged: ["X9"] }, "battery+")).toBeCloseTo(24, 4);
});

test("a removed part opens every pin of that part and changes nothing else", () => {
  const circuit = ideal()
    .part("fuse", "F1")
    .part("resistor", "R1", { ohms: 100 })
    .wire("G1:+ F1:1", "F1:2 R1:1", "R1:2 GND1:1");
  expect(at(circuit, { removed: ["F1"] }, "R1:1")).toBe(0);
  expect(at(circuit, { removed: ["F1"] }, "F1:1")).toBeCloseTo(24, 6);
  expect(at(circuit, { removed: ["R1"] }, "F1:2")).toBeCloseTo(24, 5);
});

test("an unplugged module's own pin and its cavity are two nodes, plugged in they are one", () => {
  const circuit = ideal().module("A1", { "1": null }).wire("G1:+ A1:1");
  circuit.job.plugs.push({
    id: "X1",
    side: "mating",
    cavities: [
      { mark: "1", at: [0, 0] },
      { mark: "2", at: [5, 0] },
    ],
  });
  circuit.job.links.push({ pin: "A1:1", cavity: "X1:1" });
  expect(at(circuit, {}, "A1:1", "X1:1")).toBe(0);
  expect(at(circuit, { unplugged: ["A1"] }, "A1:1", "X1:1")).toBeNull();
  expect(at(circuit, { unplugged: ["A1"] }, "X1:1")).toBeCloseTo(24, 6);
  expect(at(circuit, {}, "X1:2")).toBeNull();
});

test("what one machine has otherwise counts for that machine alone", () => {
  const circuit = ideal()
    .part("fuse", "F1")
    .part("resistor", "R1", { ohms: 100 })
    .part("resistor", "R2", { ohms: 100 })
    .wire("G1:+ F1:1", "F1:2 R1:1", "R1:2 R2:1", "R2:2 GND1:1");
  circuit.job.machines.push({
    id: "machine2",
    name: "Other",
    wires: [],
    readings: [],
    trials: [],
    changes: [
      { without: ["R1"], wires: [{ id: "W99", from: "F1:2", to: "R2:1" }], note: "R1 bridged" },
    ],
  });
  expect(solveCircuit(circuit.job, "machine1", {}).volts("R2:1", "chassis")).toBeCloseTo(12, 3);
  expect(solveCircuit(circuit.job, "machine2", {}).volts("R2:1", "chassis")).toBeCloseTo(24, 3);
});

test("a wire of known size and length drops its volts", () => {
  // IEC 60228 class 5: 1 mm² has 19.5 Ω/km; 10 m and 1 A or so
  const circuit = ideal().part("resistor", "R1", { ohms: 24 }).wire("R1:2 GND1:1");
  circuit.job.diagram.wires.push({ id: "W9", from: "G1:+", to: "R1:1", mm2: 1, metres: 10 });
  expect(at(circuit, {}, "battery+", "R1:1")).toBeCloseTo((24 * 0.195) / 24.195, 4);
});

test("a fuse that carries more than its rating is named, with what hangs on it not asserted", () => {
  const circuit = withBattery()
    .part("fuse", "F1", { amps: 5 })
    .part("resistor", "R1", { ohms: 1 })
    .part("lamp", "P1")
    .wire("G1:+ F1:1", "F1:2 R1:1", "R1:2 GND1:1", "F1:2 P1:1", "P1:2 GND1:1");
  const solved = solveCircuit(circuit.job, null, {});
  expect(solved.blown).toEqual(["F1"]);
  expect(solved.dependsOn("P1:1", "chassis")).toHaveLength(1);
  expect(solved.dependsOn("battery+", "chassis")).toEqual([]);
});

test("an unknown module leaves open what it could drive, and nothing that it could not", () => {
  const circuit = ideal()
    .module("A1", { "1": "PWR", "2": "GND", "3": "OUT" })
    .part("relay", "K1")
    .part("lamp", "P1")
    .part("lamp", "P2")
    .wire("G1:+ A1:1", "A1:2 GND1:1", "A1:3 K1:86", "K1:85 GND1:1")
    .wire("G1:+ K1:30", "K1:87 P1:1", "P1:2 GND1:1", "G1:+ P2:1", "P2:2 GND1:1");
  const solved = solveCircuit(circuit.job, null, {});
  expect(solved.dependsOn("A1:3", "chassis")).not.toEqual([]);
  expect(solved.dependsOn("P1:1", "chassis")).toContain("whether K1 pulls in");
  expect(solved.dependsOn("P2:1", "chassis")).toEqual([]);
  const unplugged = solveCircuit(circuit.job, null, { unplugged: ["A1"] });
  expect(unplugged.dependsOn("P1:1", "chassis")).toEqual([]);
  expect(unplugged.volts("P1:1", "chassis")).toBe(0);
});

const driven = (does: "follow" | "invert" | "always" | "toggle", active: "high" | "low" = "high") =>
  ideal()
    .module(
      "A1",
      { "1": null, "2": null, "3": null, "4": null },
      {
        power: { supply: ["1"], ground: ["2"] },
        behaviour: { paths: [{ between: ["1", "3"], input: "4", active, does }] },
      },
    )
    .contact("S1", "operator")
    .contact("S2", "key")
    .part("resistor", "R1", { ohms: 100 })
    .part("resistor", "R2", { ohms: 1000 })
    .wire("G1:+ S2:1", "S2:2 A1:1", "A1:2 GND1:1", "A1:3 R1:1", "R1:2 GND1:1")
    .wire("G1:+ S1:1", "S1:2 A1:4", "A1:4 R2:1", "R2:2 GND1:1");
const both = { switches: { S1: "worked", S2: "worked" } };
const keyOnly = { switches: { S2: "worked" } };

test("a module that follows or inverts an input does so only while it is powered", () => {
  expect(at(driven("follow"), both, "R1:1")).toBeCloseTo(24, 3);
  expect(at(driven("follow"), keyOnly, "R1:1")).toBe(0);
  expect(at(driven("follow"), { switches: { S1: "worked" } }, "R1:1")).toBe(0);
  expect(at(driven("invert"), keyOnly, "R1:1")).toBeCloseTo(24, 3);
  expect(at(driven("invert"), {}, "R1:1")).toBe(0);
  expect(at(driven("follow", "low"), keyOnly, "R1:1")).toBeCloseTo(24, 3);
  expect(at(driven("always"), keyOnly, "R1:1")).toBeCloseTo(24, 3);
});

test("a module that remembers is taken at rest and not asserted", () => {
  const solved = solveCircuit(driven("toggle").job, null, both);
  expect(solved.volts("R1:1", "chassis")).toBe(0);
  expect(solved.dependsOn("R1:1", "chassis")).not.toEqual([]);
});

test("a module's own sources live only while it is powered", () => {
  const circuit = ideal()
    .contact("S2", "key")
    .module(
      "A1",
      { "1": null, "2": null, "3": null },
      {
        power: { supply: ["1"], ground: ["2"] },
        sources: [{ between: ["3", "2"], volts: 5, ohms: 10 }],
        behaviour: { paths: [] },
      },
    )
    .part("resistor", "R1", { ohms: 990 })
    .wire("G1:+ S2:1", "S2:2 A1:1", "A1:2 GND1:1", "A1:3 R1:1", "R1:2 GND1:1");
  expect(at(circuit, {}, "R1:1")).toBe(0);
  expect(at(circuit, keyOnly, "R1:1")).toBeCloseTo(4.95, 4);
});

test("an alternator drives when the engine runs, and gives the charge lamp its ground when not", () => {
  const circuit = withBattery(12)
    .part("alternator", "G2")
    .part("lamp", "P1", { watts: 2 })
    .wire("G2:B+ G1:+", "G2:E GND1:1", "G1:+ P1:1", "P1:2 G2:D+");
  expect(at(circuit, {}, "P1:1", "P1:2")).toBeGreaterThan(10);
  expect(Math.abs(at(circuit, { engine: "running" }, "P1:1", "P1:2") ?? 99)).toBeLessThan(1);
  expect(at(circuit, { engine: "running" }, "battery+")).toBeGreaterThan(13);
});

test("a latching relay's contacts are not asserted", () => {
  const circuit = ideal()
    .part("relay", "K1", { latching: true })
    .part("lamp", "P1")
    .wire("G1:+ K1:30", "K1:87 P1:1", "P1:2 GND1:1");
  expect(solveCircuit(circuit.job, null, {}).dependsOn("P1:1", "chassis")).toHaveLength(1);
});

test("two equal lamps in series share the volts", () => {
  const circuit = ideal()
    .part("lamp", "P1", { watts: 10 })
    .part("lamp", "P2", { watts: 10 })
    .wire("G1:+ P1:1", "P1:2 P2:1", "P2:2 GND1:1");
  expect(at(circuit, {}, "P2:1")).toBeCloseTo(12, 5);
});

// 0.7 V for a silicon diode: Kuphaldt, Lessons in Electric Circuits III
test("diodes in a row conduct when a switch feeds them, though nothing else holds what lies between", () => {
  const row = (second: "V2:A V2:K" | "V2:K V2:A") => {
    const [near, far] = second.split(" ") as [string, string];
    return ideal()
      .contact("S1", "operator")
      .part("diode", "V1")
      .part("diode", "V2")
      .part("resistor", "R1", { ohms: 100 })
      .part("ground", "GND2")
      .wire("G1:+ S1:1", "S1:2 V1:A", `V1:K ${near}`, `${far} R1:1`, "R1:2 GND2:1");
  };
  const pressed = { switches: { S1: "worked" } };
  expect(at(row("V2:A V2:K"), {}, "R1:1")).toBe(0);
  expect(at(row("V2:A V2:K"), pressed, "R1:1")).toBeCloseTo(24 - 1.4, 2);
  expect(at(row("V2:A V2:K"), pressed, "V1:K")).toBeCloseTo(24 - 0.7, 2);
  expect(at(row("V2:K V2:A"), pressed, "R1:1")).toBe(0);
});

test("many rows of diodes between one feed and one ground are each found", () => {
  const circuit = ideal().contact("S1", "operator").wire("G1:+ S1:1");
  for (let n = 1; n <= 40; n++) {
    const [first, second] = [`V${2 * n - 1}`, `V${2 * n}`];
    circuit
      .part("diode", first)
      .part("diode", second)
      .part("resistor", `R${n}`, { ohms: 100 * n })
      // every fourth row the wrong way round
      .wire(
        n % 4 === 0 ? `S1:2 ${first}:K` : `S1:2 ${first}:A`,
        n % 4 === 0 ? `${first}:A ${second}:K` : `${first}:K ${second}:A`,
        n % 4 === 0 ? `${second}:A R${n}:1` : `${second}:K R${n}:1`,
        `R${n}:2 GND1:1`,
      );
  }
  const solved = solveCircuit(circuit.job, "machine1", { switches: { S1: "worked" } });
  for (let n = 1; n <= 40; n++)
    expect(solved.volts(`R${n}:1`, "chassis")).toBeCloseTo(n % 4 === 0 ? 0 : 22.6, 2);
});

test("a state that can't be meant is named", () => {
  const circuit = ideal().contact("S1", "operator");
  const problems = (when: When) => solveCircuit(circuit.job, null, when).problems;
  expect(problems({ switches: { S1: "sideways" } })[0]).toContain("sideways");
  expect(problems({ switches: { G1: "worked" } })).toHaveLength(1);
  expect(problems({ removed: ["Q7"] })).toHaveLength(1);
  expect(problems({ switches: { S1: "worked" }, removed: ["G1"] })).toEqual([]);
});
