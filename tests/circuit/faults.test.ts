import { expect, test } from "vitest";
import { type Fault, failuresOf, solveCircuit } from "../../src/circuit/index.ts";
import type { When } from "../../src/job/index.ts";
import { CircuitBuilder } from "../support/circuit-builder.ts";

/** Battery, fuse, contact, relay and lamp, and a lamp beside them. 12 V and stiff. */
const machine = () =>
  new CircuitBuilder(12)
    .part("battery", "G1", { volts: 12, ohms: 0.001 })
    .part("ground", "E1")
    .part("ground", "E2")
    .part("ground", "E3")
    .part("fuse", "F1", { amps: 10 })
    .contact("S1", "operator")
    .part("relay", "K1", { coilOhms: 80 })
    .part("lamp", "P1", { watts: 21 })
    .part("solenoid", "M1", { ohms: 12 })
    .part("splice", "SP1")
    .wire("G1:- E1:1", "G1:+ F1:1", "F1:2 SP1:1", "SP1:1 S1:1", "S1:2 K1:86", "K1:85 E2:1")
    .wire("SP1:1 K1:30", "K1:87 P1:1", "P1:2 E3:1", "K1:87a M1:1", "M1:2 E3:1");
const worked: When = { switches: { S1: "worked" } };

const solved = (when: When, ...faults: Fault[]) =>
  solveCircuit(machine().job, null, when, [], faults);
const volts = (when: When, at: string, ...faults: Fault[]) =>
  solved(when, ...faults).volts(at, "chassis");
/** Volts across the lamp and across the solenoid. */
const loads = (when: When, ...faults: Fault[]) => {
  const found = solved(when, ...faults);
  return [found.volts("P1:1", "P1:2"), found.volts("M1:1", "M1:2")].map(
    (one) => one && Math.round(one * 10) / 10,
  );
};

test("a healthy machine: the relay takes the volts from the solenoid to the lamp", () => {
  expect(loads({})).toEqual([0, 12]);
  expect(loads(worked)).toEqual([12, 0]);
});

test("open: a fuse, a coil, a lamp, a wire, a terminal", () => {
  expect(loads(worked, { part: "F1", mode: "open" })).toEqual([0, 0]);
  expect(loads(worked, { part: "K1", mode: "open" })).toEqual([0, 12]);
  const lamp = solved(worked, { part: "P1", mode: "open" });
  expect(lamp.volts("P1:1", "chassis")).toBeCloseTo(12, 1);
  expect(lamp.flows.some(({ part }) => part === "P1")).toBe(false);
  const feed = machine().job.diagram.wires.find(({ from }) => from === "F1:2")?.id ?? "";
  expect(volts(worked, "SP1:1", { part: feed, mode: "open" })).toBe(0);
  expect(loads(worked, { part: "K1:85", mode: "open" })).toEqual([0, 12]);
});

test("the frame's own joint: a ground that lets go leaves its lamp without a way back", () => {
  const open = solved(worked, { part: "E3", mode: "open" });
  expect(open.volts("P1:1", "P1:2")).toBeCloseTo(0, 6);
  expect(open.volts("P1:2", "chassis")).toBeCloseTo(12, 1);
});

test("a splice that lets go parts all the wires that meet there", () => {
  expect(solved(worked, { part: "SP1", mode: "open" }).relays.get("K1")).toBe(false);
  expect(volts(worked, "F1:2", { part: "SP1", mode: "open" })).toBeCloseTo(12, 1);
  expect(volts(worked, "K1:30", { part: "SP1", mode: "open" })).toBe(0);
});

test("high resistance: ten ohms more, for a lamp's joint a dim lamp and for a meter full volts", () => {
  const joint: Fault = { part: "K1", mode: "high-resistance", at: "87" };
  const [lamp] = loads(worked, joint);
  expect(lamp).toBeGreaterThan(1);
  expect(lamp).toBeLessThan(6);
  // with the lamp out nothing flows, and nothing is lost
  expect(volts({ ...worked, removed: ["P1"] }, "K1:87", joint)).toBeCloseTo(12, 1);
  const wire = machine().job.diagram.wires.find(({ from }) => from === "P1:2")?.id ?? "";
  expect(volts(worked, "P1:2", { part: wire, mode: "high-resistance" })).toBeGreaterThan(6);
  expect(volts(worked, "P1:1", { part: "P1:1", mode: "high-resistance" })).toBeGreaterThan(11);
});

test("shorted: the fuse carries far more than its rating", () => {
  const shorted = solved({}, { part: "M1", mode: "shorted" });
  expect(shorted.blown).toContain("F1");
  expect(shorted.volts("M1:1", "M1:2")).toBeLessThan(11.9);
});

test("stuck: a contact of a switch, and a relay's armature with all its contacts", () => {
  expect(loads(worked, { part: "S1", mode: "stuck-open" })).toEqual([0, 12]);
  expect(loads({}, { part: "S1", mode: "stuck-closed" })).toEqual([12, 0]);
  expect(loads(worked, { part: "K1", mode: "stuck-open" })).toEqual([0, 12]);
  expect(loads({}, { part: "K1", mode: "stuck-closed" })).toEqual([12, 0]);
});

test("grounded, shorted to supply, bridged: wires and terminals", () => {
  const control = machine().job.diagram.wires.find(({ from }) => from === "S1:2")?.id ?? "";
  expect(solved(worked, { part: control, mode: "grounded" }).blown).toContain("F1");
  expect(loads({}, { part: control, mode: "shorted-to-supply" })).toEqual([12, 0]);
  expect(loads({}, { part: control, mode: "bridged", to: "K1:30" })).toEqual([12, 0]);
  expect(loads({}, { part: "S1:2", mode: "bridged", to: "SP1:1" })).toEqual([12, 0]);
  expect(solved({}, { part: "M1", mode: "grounded" }).blown).toContain("F1");
});

test("leaky: ten kilohms across an open contact show volts to a meter and pull nothing in", () => {
  const leak: Fault = { part: "S1", mode: "leaky" };
  expect(solved({ removed: ["K1"] }).volts("S1:2", "chassis")).toBeNull();
  const meter = {
    red: "S1:2",
    black: "chassis",
    acts: { is: "ohmic", ohms: 1e7, low: 1e7, high: 1e7 },
  } as const;
  const read = solveCircuit(machine().job, null, { removed: ["K1"] }, [meter], [leak]);
  expect(read.volts("S1:2", "chassis")).toBeGreaterThan(11.9);
  expect(loads({}, leak)).toEqual([0, 12]);
});

test("dead: a module that does nothing, and a converter or alternator that gives nothing", () => {
  const circuit = new CircuitBuilder(12)
    .part("battery", "G1", { volts: 12, ohms: 0.001 })
    .part("ground", "E1")
    .module(
      "A1",
      { "1": "PWR", "2": "GND", "3": "OUT" },
      {
        power: { supply: ["1"], ground: ["2"] },
        behaviour: { paths: [{ between: ["1", "3"], input: "1", does: "follow" }] },
      },
    )
    .part("lamp", "P1")
    .part("converter", "T1", { outVolts: 24 })
    .part("alternator", "G2")
    .wire("G1:- E1:1", "G1:+ A1:1", "A1:2 E1:1", "A1:3 P1:1", "P1:2 E1:1")
    .wire("G1:+ T1:in+", "T1:in- E1:1", "T1:out- E1:1", "G1:+ G2:B+", "G2:E E1:1");
  const found = (part: string | null) =>
    solveCircuit(
      circuit.job,
      null,
      { engine: "running" },
      [],
      part === null ? [] : [{ part, mode: "dead" }],
    );
  expect(found(null).volts("P1:1", "chassis")).toBeGreaterThan(11);
  expect(found("A1").volts("P1:1", "chassis")).toBeCloseTo(0, 6);
  expect(found(null).volts("T1:out+", "chassis")).toBeCloseTo(24, 1);
  expect(found("T1").volts("T1:out+", "chassis")).toBeNull();
  expect(found(null).volts("G1:+", "chassis")).toBeGreaterThan(13.5);
  expect(found("G2").volts("G1:+", "chassis")).toBeLessThan(12.1);
});

test("every failure that a part of these machines can have changes what the solver is given", () => {
  const { job } = machine();
  for (const part of job.diagram.parts) {
    for (const { mode } of failuresOf(part)) {
      const seen = [{}, worked].map((when) => {
        const say = (faults: readonly Fault[]) =>
          JSON.stringify(
            solveCircuit(job, null, when, [], faults).flows.map(({ part: id, amps }) => [id, amps]),
          );
        return say([{ part: part.id, mode }]) !== say([]);
      });
      expect(seen.includes(true), `${part.id} ${mode}`).toBe(true);
    }
  }
});
