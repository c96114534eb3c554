import { expect, test } from "vitest";
import type { Job, Reading } from "../../src/job/index.ts";
import { dropsAlong, whenCurrentFlows } from "../../src/readings/index.ts";
import { USUAL_DROPS } from "../../src/standards/index.ts";
import { CircuitBuilder } from "../support/circuit-builder.ts";

const ON = { switches: { S1: "worked" } };

/** Battery, fuse, switch, splice, heater of 2 Ω at 24 V, strap; every wire 2.5 mm² and 2 m. */
function machine(readings: readonly Reading[] = []): Job {
  const { job } = new CircuitBuilder(24)
    .part("battery", "G1", { volts: 24, ohms: 0 })
    .part("fuse", "F1", { amps: 20 })
    .contact("S1", "operator")
    .part("splice", "SP1")
    .part("heater", "E1", { ohms: 2 })
    .part("ground", "GND1")
    .part("ground", "GND2")
    .wire("G1:+ F1:1", "F1:2 S1:1", "S1:2 SP1:1", "SP1:1 E1:1", "E1:2 GND2:1", "GND1:1 G1:-");
  for (const wire of job.diagram.wires) Object.assign(wire, { mm2: 2.5, metres: 2 });
  job.machines[0]?.readings.push(...readings);
  return job;
}

const id = (job: Job) => job.machines[0]?.id ?? "";

test("the way from plus over the load to minus, each leg with its usual limit", () => {
  const job = machine();
  const { legs, why } = dropsAlong(job, id(job), "E1", ON);
  expect(why).toBeNull();
  expect(legs.map(({ is, ids, red, black }) => [is, ids.join(" "), red, black])).toEqual([
    ["wire", "W1", "G1:+", "F1:1"],
    ["fuse", "F1", "F1:1", "F1:2"],
    ["wire", "W2", "F1:2", "S1:1"],
    ["contacts", "S1", "S1:1", "S1:2"],
    ["wire", "W3", "S1:2", "SP1:1"],
    ["joint", "SP1", "SP1:1", "SP1:1"],
    ["wire", "W4", "SP1:1", "E1:1"],
    ["load", "E1", "E1:1", "E1:2"],
    ["ground-path", "W5 W6", "E1:2", "G1:-"],
  ]);
  const limits = legs.map(({ limit }) => (limit === null ? null : USUAL_DROPS[limit]));
  // SAE-attributed, common practice: connection 0.1, cable 0.2, contacts 0.3, ground path 0.1 V
  expect(limits).toEqual([0.2, 0.1, 0.2, 0.3, 0.2, 0.1, 0.2, null, 0.1]);
});

test("what a leg drops is its amps by its ohms", () => {
  const job = machine();
  const { legs, amps } = dropsAlong(job, id(job), "E1", ON);
  // IEC 60228 class 5: 7.98 Ω/km, so 0.01596 Ω a wire; contact and fuse some 0.01 Ω each
  const wire = 0.01596;
  expect(amps).toBeCloseTo(24 / (2 + 6 * wire + 0.02), 2);
  const first = legs[0]?.drop;
  expect(first?.about).toBeCloseTo(amps * wire, 4);
  expect(first?.least).toBeLessThan(amps * wire);
  expect(first?.most).toBeGreaterThan(amps * wire);
  expect(legs.at(-1)?.drop?.about).toBeCloseTo(2 * amps * wire, 4);
});

test("a wire of which nobody said the length drops nobody knows what, and moves nothing else", () => {
  const job = machine();
  const known = dropsAlong(job, id(job), "E1", ON);
  const short = machine();
  const [first] = short.diagram.wires;
  delete first?.metres;
  const { legs, amps } = dropsAlong(short, id(short), "E1", ON);
  expect(legs[0]?.drop).toBeNull();
  expect(amps).toBeGreaterThan(known.amps);
  expect(amps).toBeLessThan(known.amps * 1.02);
});

test("a cavity tied to a pin on the way shows the same way", () => {
  const job = machine();
  job.diagram.parts.push({
    kind: "module",
    id: "A1",
    sheet: "sheet1",
    at: [0, 0],
    turn: 0,
    pins: [{ id: "1" }, { id: "2" }],
    power: { supply: ["1"], ground: ["2"] },
    behaviour: { paths: [], loads: [{ between: ["1", "2"], ohms: 24 }] },
  });
  job.diagram.wires.push(
    { id: "W7", from: "SP1:1", to: "A1:1", mm2: 1, metres: 1 },
    { id: "W8", from: "A1:2", to: "GND2:1", mm2: 1, metres: 1 },
  );
  job.plugs.push({ id: "X1", side: "wire", cavities: [{ mark: "1", at: [0, 0] }] });
  job.links.push({ pin: "A1:1", cavity: "X1:1" });
  const { legs, amps } = dropsAlong(job, id(job), "X1:1", ON);
  expect(amps).toBeCloseTo(0.98, 1);
  expect(legs.map(({ ids }) => ids.join(" "))).toEqual([
    "W1",
    "F1",
    "W2",
    "S1",
    "W3",
    "SP1",
    "W7",
    "A1",
    "W8 W6",
  ]);
});

test("with the load off there is nothing to read, and the state that has it on is found", () => {
  const job = machine();
  expect(dropsAlong(job, id(job), "E1", {}).why).toMatch(/No current flows/);
  expect(whenCurrentFlows(job, id(job), "E1")).toEqual(ON);
  const cut = machine();
  cut.diagram.wires.splice(4, 1);
  expect(whenCurrentFlows(cut, id(cut), "E1")).toBeNull();
  expect(dropsAlong(job, id(job), "E1", { switches: { S1: "up" } }).why).toMatch(/no position/);
});

test("of a relay it is the coil's way, and a contact for a starter has no usual ohms", () => {
  const { job } = new CircuitBuilder(24)
    .part("battery", "G1", { volts: 24, ohms: 0.01 })
    .contact("S1", "operator")
    .part("relay", "K1", { coilOhms: 100 })
    .part("motor", "M1", { ohms: 0.1 })
    .wire("G1:+ S1:1", "S1:2 K1:86", "K1:85 G1:-", "G1:+ K1:30", "K1:87 M1:1", "M1:2 G1:-");
  const coil = dropsAlong(job, id(job), "K1", ON);
  expect(coil.amps).toBeLessThan(0.3);
  expect(coil.legs.map(({ ids }) => ids.join(" "))).toEqual(["W1", "S1", "W2", "K1", "W3"]);
  const starter = dropsAlong(job, id(job), "M1", ON);
  expect(starter.amps).toBeGreaterThan(100);
  expect(starter.legs.find(({ is }) => is === "contacts")?.drop).toBeNull();
});

test("what a module of which nobody has said anything drives depends on it, and is no firm answer", () => {
  const { job } = new CircuitBuilder(24)
    .part("battery", "G1")
    .part("ground", "GND1")
    .module("A1", { "1": null, "2": null })
    .part("lamp", "P1", { watts: 21 })
    .wire("G1:+ A1:1", "A1:2 P1:1", "P1:2 GND1:1", "G1:- GND1:1");
  const { legs, why, isUnsaid } = dropsAlong(job, id(job), "P1", {});
  expect([legs, isUnsaid]).toEqual([[], true]);
  expect(why).toBe("Depends on what A1 does.");
});

test("a drop read across a leg in this state is held against its limit, either way round", () => {
  const drop = (name: string, value: number, more: Partial<Reading> = {}): Reading => ({
    id: name,
    quantity: "drop",
    red: "S1:1",
    black: "S1:2",
    value,
    when: ON,
    ...more,
  });
  const job = machine([
    drop("R1", 0.3),
    drop("R2", -0.8, { red: "S1:2", black: "S1:1" }),
    drop("R3", 0.05, { when: {} }),
    drop("R4", 0.3, { red: "E1:2", black: "battery-" }),
    drop("R5", 22, { red: "E1:1", black: "E1:2" }),
    drop("R6", 5, { quantity: "volts" }),
  ]);
  const { legs } = dropsAlong(job, id(job), "E1", ON);
  const read = legs.flatMap(({ is, read: own }) =>
    own.map(({ reading, volts, withinLimit }) => [is, reading, volts, withinLimit]),
  );
  expect(read).toEqual([
    ["contacts", "R1", 0.3, true],
    ["contacts", "R2", 0.8, false],
    ["load", "R5", 22, null],
    ["ground-path", "R4", 0.3, false],
  ]);
});
