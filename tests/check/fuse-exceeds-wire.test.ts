import { expect, test } from "vitest";
import type { Conductors, Wire } from "../../src/job/index.ts";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const RULE = "fuse-exceeds-wire";

/** Gives wires their sizes, by the pin that they begin at. */
function sized(
  circuit: CircuitBuilder,
  sizes: Readonly<Record<string, Partial<Wire>>>,
  conductors?: Conductors,
) {
  const { job } = circuit;
  for (const wire of job.diagram.wires) Object.assign(wire, sizes[wire.from] ?? {});
  return conductors ? { ...job, conductors } : job;
}

const lamp = (amps: number) =>
  withBattery()
    .part("fuse", "F1", { amps })
    .part("lamp", "P1", { watts: 5 })
    .wire("G1:+ F1:1", "F1:2 P1:1", "P1:2 GND1:1");

const with105: Conductors = { table: "33-cfr-183.425", insulation: 105 };

testExamplesOfPage(RULE);

test("without a choice only what no column allows is told, and how to choose", () => {
  // AWG 18: 25 A at 200 °C, so 37.5 A at 150 %
  expect(findingsOf(RULE, sized(lamp(35), { "F1:2": { awg: 18 } }))).toEqual([]);
  const [found] = findingsOf(RULE, sized(lamp(40), { "F1:2": { awg: 18 } }));
  expect(found?.subjects).toEqual(["F1", "W3"]);
  expect(found?.message).toMatch(/25 A by 33 CFR 183.425 table 5, its most generous column/);
  expect(found?.message).toMatch(/37.5 A \(150 %, 33 CFR 183.455\)/);
  expect(found?.message).toMatch(/Wires and fuses/);
});

test("a wire thinner than all of the table carries no more than its thinnest", () => {
  expect(findingsOf(RULE, sized(lamp(35), { "F1:2": { mm2: 0.35 } }))).toEqual([]);
  expect(findingsOf(RULE, sized(lamp(40), { "F1:2": { mm2: 0.35 } }))).toHaveLength(1);
  expect(findingsOf(RULE, sized(lamp(40), { "F1:2": { awg: 22 } }))[0]?.message).toMatch(
    /AWG 22, at most as AWG 18/,
  );
});

test("with a choice the column and its factors are named and count", () => {
  // AWG 14 at 105 °C: 35 A, 52.5 A at 150 %; in an engine space 29.75 A and 44.63 A; four side by side 17.85 A
  const at = (amps: number, conductors: Conductors) =>
    findingsOf(RULE, sized(lamp(amps), { "F1:2": { mm2: 1.5 } }, conductors));
  expect(at(50, with105)).toEqual([]);
  expect(at(55, with105)[0]?.message).toMatch(
    /1.5 mm², counted as AWG 14.*35 A by 33 CFR 183.425 table 5, 105 °C insulation, so a fuse of at most 52.5 A/,
  );
  expect(at(50, { ...with105, engineSpace: true })[0]?.message).toMatch(/engine space × 0.85/);
  expect(at(30, { ...with105, engineSpace: true, bundled: 4 })[0]?.message).toMatch(
    /4 in a bundle × 0.6/,
  );
  expect(at(50, { ...with105, engineSpace: false })).toEqual([]);
});

test("the thinnest wire counts, as far as the next fuse, a load or a module", () => {
  const circuit = (amps: number) =>
    withBattery()
      .part("fuse", "F1", { amps })
      .contact("S1", "operator")
      .part("splice", "SP1")
      .part("inline", "X9", { pins: [{ id: "1" }] })
      .part("fuse", "F2", { amps: 5 })
      .module("A1", { "1": null, "3": null })
      .part("lamp", "P1")
      .wire("G1:+ F1:1", "F1:2 S1:1", "S1:2 SP1:1", "SP1:1 X9:1", "X9:1 A1:1", "SP1:1 F2:1")
      .wire("F2:2 P1:1", "P1:2 GND1:1", "A1:3 P1:1");
  const thick = { "F1:2": { mm2: 6 }, "S1:2": { mm2: 6 } };
  // past the switch, the splice and the inline plug
  const behind = sized(circuit(60), { ...thick, "X9:1": { mm2: 0.75 } });
  expect(findingsOf(RULE, behind)[0]?.subjects).toEqual(["F1", "W6"]);
  // what F2 protects, what lies before the fuse, and what the module drives is not F1's
  const others = {
    "F2:2": { mm2: 0.5 },
    "G1:+": { mm2: 0.5 },
    "A1:3": { mm2: 0.5 },
    "P1:2": { mm2: 0.5 },
  };
  expect(findingsOf(RULE, sized(circuit(60), { ...thick, ...others }))).toEqual([]);
});

test("a smaller fuse before it protects the wire as well", () => {
  const circuit = (first: number | undefined) =>
    sized(
      withBattery()
        .part("breaker", "Q1", first === undefined ? {} : { amps: first })
        .part("fuse", "F1", { amps: 60 })
        .part("lamp", "P1")
        .wire("G1:+ Q1:1", "Q1:2 F1:1", "F1:2 P1:1", "P1:2 GND1:1"),
      { "F1:2": { mm2: 0.75 } },
    );
  expect(findingsOf(RULE, circuit(20))).toEqual([]);
  expect(findingsOf(RULE, circuit(undefined))).toEqual([]);
  expect(findingsOf(RULE, circuit(80))).toHaveLength(1);
});

test("contacts that are never closed together lead to no wire", () => {
  // F1 at 87, F2 at 87a, the load at 30: F1 never feeds what lies behind F2
  const circuit = withBattery()
    .part("fuse", "F1", { amps: 60 })
    .part("fuse", "F2", { amps: 10 })
    .part("relay", "K1")
    .contact("S1", "operator")
    .part("lamp", "P1")
    .wire("G1:+ F1:1", "G1:+ F2:1", "F1:2 K1:87", "F2:2 K1:87a", "K1:30 P1:1", "P1:2 GND1:1")
    .wire("G1:+ S1:1", "S1:2 K1:86", "K1:85 GND1:1");
  expect(findingsOf(RULE, sized(circuit, { "F2:2": { mm2: 0.75 } }))).toEqual([]);
  expect(findingsOf(RULE, sized(circuit, { "F1:2": { mm2: 0.75 } }))).toHaveLength(1);
});

test("is silent of wires side by side, of a fuse of no size and of one that nothing feeds", () => {
  const twin = lamp(60).wire("F1:2 P1:1");
  expect(findingsOf(RULE, sized(twin, { "F1:2": { mm2: 0.75 } }))).toEqual([]);
  const unsaid = withBattery()
    .part("fuse", "F1")
    .part("lamp", "P1")
    .wire("G1:+ F1:1", "F1:2 P1:1", "P1:2 GND1:1");
  expect(findingsOf(RULE, sized(unsaid, { "F1:2": { mm2: 0.1 } }))).toEqual([]);
  const untraced = withBattery()
    .part("offpage", "X8")
    .part("fuse", "F1", { amps: 60 })
    .part("lamp", "P1")
    .wire("X8:1 F1:1", "F1:2 P1:1", "P1:2 GND1:1");
  expect(findingsOf(RULE, sized(untraced, { "F1:2": { mm2: 0.75 } }))).toEqual([]);
});
