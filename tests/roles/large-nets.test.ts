/** Nets with hundreds of pins and switches of many positions: the answer is that of a small one. */
import { expect, test } from "vitest";
import { rolesOf } from "../../src/roles/index.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const roleAt = (circuit: CircuitBuilder, pin: string) => {
  const role = rolesOf(circuit.job, "machine1").find((one) => one.pin === pin);
  if (!role) throw new Error(`no role at ${pin}`);
  return role;
};

test("on a line from module to module each one names its neighbour, not the first of all", () => {
  const circuit = withBattery();
  for (let n = 1; n <= 60; n++) circuit.module(`A${n}`, { "1": "CAN H" });
  for (let n = 2; n <= 60; n++) circuit.wire(`A${n - 1}:1 A${n}:1`);
  const role = roleAt(circuit, "A40:1");
  expect(role.fits).toEqual(["signal"]);
  expect(role.sentence).toContain("straight to module A39.");
  expect(role.because).toHaveLength(2);
});

/** All pins of A1 on one net, with whatever hangs on it besides. */
function manyPins(count: number): CircuitBuilder {
  const pins = Object.fromEntries(Array.from({ length: count }, (_, n) => [String(n + 1), null]));
  const circuit = withBattery().module("A1", pins).part("splice", "SP1");
  for (let n = 1; n <= count; n++) circuit.wire(`A1:${n} SP1:1`);
  return circuit;
}

test("pins of one module on one net are what three of them would be", () => {
  const hang = (circuit: CircuitBuilder) =>
    circuit.part("lamp", "P1").wire("SP1:1 P1:1", "P1:2 GND1:1");
  const few = roleAt(hang(manyPins(3)), "A1:3");
  const many = hang(manyPins(300));
  for (const pin of ["A1:1", "A1:2", "A1:150", "A1:300"]) {
    const role = roleAt(many, pin);
    expect(role.fits, pin).toEqual(few.fits);
    expect(role.circuitSide, pin).toBe(few.circuitSide);
  }
});

test("a relay that many pins of the module drive is fed for each of them by the others", () => {
  const drive = (circuit: CircuitBuilder) =>
    circuit
      .part("relay", "K1")
      .module("A2", { "1": null })
      .wire("SP1:1 K1:86", "K1:85 GND1:1", "G1:+ K1:30", "K1:87 SP1:1");
  const few = roleAt(drive(manyPins(3)), "A1:3");
  expect(roleAt(drive(manyPins(100)), "A1:77").fits).toEqual(few.fits);
});

test("a stated source is told apart wherever its pins stand among many on one net", () => {
  const pins = Object.fromEntries(Array.from({ length: 40 }, (_, n) => [String(n + 1), null]));
  const circuit = withBattery()
    .module("A1", pins, { sources: [{ between: ["39", "40"], volts: 5, ohms: 1 }] })
    .part("potentiometer", "R1")
    .wire("A1:39 R1:1", "R1:2 A1:40", "R1:W A1:38");
  for (let n = 1; n <= 20; n++) circuit.wire(`A1:${n} A1:40`);
  expect(roleAt(circuit, "A1:39").fits).toContain("sensor-supply");
});

test("a switch of 31 positions is followed in all of them; past that anything is possible", () => {
  const selector = (count: number) => {
    const positions = Array.from({ length: count }, (_, n) => `p${n}`);
    return withBattery()
      .module("A1", { "1": "IN" })
      .part("switch", "S1", {
        control: "operator",
        positions,
        contacts: positions.map((position, n) => ({
          between: ["c", String(n)],
          closedIn: [position],
        })),
      })
      .wire("G1:+ S1:c", `S1:${count - 1} A1:1`);
  };
  const last = roleAt(selector(31), "A1:1");
  expect(last.fits).toEqual(["switched-supply", "input"]);
  expect(last.sentence).toContain("switch S1 (p30)");
  expect(roleAt(selector(32), "A1:1").fits.length).toBeGreaterThan(5);
});
