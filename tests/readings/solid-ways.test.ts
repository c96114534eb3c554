/** Whether a way is a ground, a feed or a load goes by the parts on it, never by its ohms. */
import { expect, test } from "vitest";
import { type ExpectedReading, expectedAt } from "../../src/readings/index.ts";
import { rolesOf } from "../../src/roles/index.ts";
import { readSample } from "../samples/sample-files.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

/** A module A1 fed at 1 and grounded at 2; its pins on cavities of the same marks. */
function plugged(more: (circuit: CircuitBuilder) => CircuitBuilder) {
  const pins = ["1", "2", "3"];
  const { job } = more(
    withBattery(12)
      .part("fuse", "F1")
      .module("A1", Object.fromEntries(pins.map((pin) => [pin, null])))
      .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1"),
  );
  job.plugs.push({
    id: "X1",
    side: "mating",
    cavities: pins.map((mark) => ({ mark, at: [0, 0] })),
  });
  for (const mark of pins) job.links.push({ pin: `A1:${mark}`, cavity: `X1:${mark}` });
  return job;
}

/** A test lamp from battery plus: it tries a way to ground. */
const triesGround = ({ setup }: ExpectedReading) =>
  setup.with === "test-lamp" && setup.red === "battery+";
const triesFeed = ({ setup }: ExpectedReading) =>
  setup.with === "test-lamp" && setup.black === "chassis";
const ohmsOf = (offers: readonly ExpectedReading[]) =>
  offers.filter(({ setup, predicted }) => setup.quantity === "ohms" && predicted !== "OL");

test("a big lamp to ground is no ground, however few ohms its cold filament has", () => {
  const job = plugged((circuit) =>
    circuit.part("lamp", "P1", { watts: 60 }).wire("A1:3 P1:1", "P1:2 GND1:1"),
  );
  const offers = expectedAt(job, "machine1", "X1:3");
  const [ohms] = ohmsOf(offers);
  expect(ohms?.predicted).toBeLessThan(0.5);
  expect(ohms?.proves).toContain("P1 with its wiring");
  expect(offers.some(triesGround)).toBe(false);
  expect(offers.some(({ proves }) => proves.includes("olid way"))).toBe(false);
});

test("a long thin wire to ground is a ground, however many ohms it has", () => {
  const job = plugged((circuit) => circuit.wire("A1:3 GND1:1"));
  Object.assign(job.diagram.wires.at(-1) ?? {}, { mm2: 0.5, metres: 90 });
  const offers = expectedAt(job, "machine1", "X1:3");
  const [ohms] = ohmsOf(offers);
  expect(ohms?.predicted).toBeGreaterThan(2);
  expect(ohms?.proves).toContain("A solid way to chassis");
  expect(offers.some(triesGround)).toBe(true);
});

test("a closed contact leads to ground, an open one does not", () => {
  const to = (closedIn: string) =>
    plugged((circuit) =>
      circuit
        .contact("S1", "pressure", { contacts: [{ between: ["1", "2"], closedIn: [closedIn] }] })
        .wire("A1:3 S1:1", "S1:2 GND1:1"),
    );
  expect(expectedAt(to("rest"), "machine1", "X1:3").some(triesGround)).toBe(true);
  expect(expectedAt(to("worked"), "machine1", "X1:3").some(triesGround)).toBe(false);
});

test("full volts through a big lamp are no feed", () => {
  const job = plugged((circuit) =>
    circuit.part("lamp", "P1", { watts: 60 }).wire("A1:3 P1:1", "P1:2 F1:2"),
  );
  const offers = expectedAt(job, "machine1", "X1:3");
  expect(offers.some(triesFeed)).toBe(false);
  expect(offers.some(({ proves }) => proves.startsWith("Volts through P1"))).toBe(true);
  expect(expectedAt(job, "machine1", "X1:1").some(triesFeed)).toBe(true);
});

test("full volts that another module gives a sensor are no feed", () => {
  const job = plugged((circuit) =>
    circuit
      .module(
        "A2",
        { "1": null, "2": null, "3": null },
        {
          power: { supply: ["1"], ground: ["2"] },
          sources: [{ between: ["3", "2"], volts: 12, ohms: 1 }],
          behaviour: { paths: [] },
        },
      )
      .wire("F1:2 A2:1", "A2:2 GND1:1", "A2:3 A1:3"),
  );
  const offers = expectedAt(job, "machine1", "X1:3");
  expect(offers.some(({ predicted }) => typeof predicted === "number" && predicted > 11)).toBe(
    true,
  );
  expect(offers.some(({ proves }) => proves.toLowerCase().includes("feed is there"))).toBe(false);
  expect(offers.some(({ proves }) => proves.includes("through the load"))).toBe(false);
  expect(offers.some(triesFeed)).toBe(false);
});

test("on the trailer a lamp is hung from plus on grounds alone", () => {
  const job = readSample("trailer-iso-12098/job.json");
  const roles = rolesOf(job, "trailer3").filter(({ pin }) => pin.startsWith("A1:"));
  const tried = roles.filter(({ cavity }) =>
    expectedAt(job, "trailer3", cavity ?? "").some(triesGround),
  );
  expect(tried.map(({ pin }) => pin)).toEqual(
    roles.filter(({ fits }) => fits.includes("ground")).map(({ pin }) => pin),
  );
  expect(tried.map(({ pin }) => pin)).not.toContain("A1:7");
});
