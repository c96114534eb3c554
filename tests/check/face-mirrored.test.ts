import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { fourWays, measuredAs, ohms, volts } from "../support/four-way-plug.ts";
import { expectToldOrSilent } from "../support/mislaid-telling.ts";

/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20261127);

const RULE = "face-mirrored";
const CERTAIN = [RULE, "cavities-swapped", "row-off-by-one"];

testExamplesOfPage(RULE);

/** 4 is the feed's image, 3 the ground's. */
const turned = [
  volts("4", 25.1),
  volts("1", 0.01),
  ohms("1", 20.3),
  ohms("3", 0.2),
  ohms("2", 8.1),
];

test("names the plug and how much agrees, and offers to turn the face over", () => {
  const [found] = findingsOf(RULE, measuredAs(turned));
  expect(found?.subjects.slice(0, 2)).toEqual(["X1", "V4"]);
  expect(found?.message).toMatch(/5 readings agree; as drawn 5 readings do not/);
  const moves = [
    { from: "1", to: "4" },
    { from: "2", to: "3" },
    { from: "3", to: "2" },
    { from: "4", to: "1" },
  ];
  expect(found?.corrections).toEqual([
    { does: "move-notes", plug: "X1", moves },
    { does: "flip-face", plug: "X1", moves },
  ]);
});

test("colours noted with the readings count too", () => {
  const [found] = findingsOf(RULE, measuredAs(turned, { "4": "RD", "1": "BU" }));
  expect(found?.message).toMatch(/5 readings and 2 colours agree/);
});

test("a face whose cavities have no image is never mirrored", () => {
  const circuit = fourWays();
  const [plug] = circuit.job.plugs;
  const [, second] = plug?.cavities ?? [];
  if (second) second.at = [5, 3];
  expect(findingsOf(RULE, measuredAs(turned, {}, circuit))).toEqual([]);
});

test("marks that run the other way round are none of it", () => {
  const circuit = fourWays();
  circuit.job.plugs[0]?.cavities.forEach((cavity, index) => {
    cavity.at = [15 - index * 5, 0];
  });
  const job = measuredAs([volts("1", 25.1), ohms("3", 8.1)], {}, circuit);
  expect(checkJob(job, "M1").findings.filter(({ rule }) => CERTAIN.includes(rule))).toEqual([]);
});

/** The four-way plug on a whole machine: so many fused lamps with a switch and a relay each. */
function amongMany(circuits: number) {
  const circuit = fourWays().part("splice", "SP1").wire("G1:+ SP1:1");
  for (const wire of circuit.job.diagram.wires)
    if (/^G1:/.test(wire.from)) Object.assign(wire, { mm2: 35, metres: 1 });
  for (let n = 100; n < 100 + circuits; n++) {
    circuit
      .part("fuse", `F${n}`, { amps: 10 })
      .part("switch", `S${n}`, {
        positions: ["off", "on"],
        rest: n % 2 === 0 ? "on" : "off",
        contacts: [{ between: ["1", "2"], closedIn: ["on"] }],
        control: "operator",
      })
      .part("relay", `K${n}`, { coilOhms: 300 })
      .part("lamp", `P${n}`, { watts: 21 })
      .wire(`SP1:1 F${n}:1`, `F${n}:2 S${n}:1`, `S${n}:2 K${n}:86`, `K${n}:85 GND1:1`)
      .wire(`F${n}:2 K${n}:30`, `K${n}:87 P${n}:1`, `P${n}:2 GND1:1`);
  }
  return circuit;
}

test("it is proved on a machine of more than a thousand parts and wires too", () => {
  const circuit = amongMany(120);
  const { parts, wires } = circuit.job.diagram;
  expect(parts.length + wires.length).toBeGreaterThan(1300);
  const [found] = findingsOf(RULE, measuredAs(turned, { "4": "RD", "1": "BU" }, circuit));
  expect(found?.message).toMatch(/5 readings and 2 colours agree.*No single fault shows this/);
}, 120_000);

test("a face read from its other side on a true machine: told, or not told, but never anything else", () => {
  expectToldOrSilent(RULE, "mirrored", SEED);
}, 120_000);
