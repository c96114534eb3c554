import { expect, test } from "vitest";
import type { Colour } from "../../src/job/index.ts";
import {
  findingsOf,
  lampModule,
  matched,
  onMachine,
  testExamplesOfPage,
} from "../support/check-example.ts";

const RULE = "colour-differs";

testExamplesOfPage(RULE);

const drawnIn = (colour: Colour) => {
  const circuit = matched(lampModule());
  const wire = circuit.job.diagram.wires.find((one) => one.from === "A1:3");
  if (wire) wire.colour = colour;
  return circuit;
};

test("gives both colours by their codes", () => {
  const job = onMachine(drawnIn({ base: "GY", tracer: "RD" }), {
    wires: [{ cavity: "X1:3", colour: { base: "VT" } }],
  });
  const [found] = findingsOf(RULE, job);
  expect(found?.subjects).toEqual(["X1:3", "A1:3"]);
  expect(found?.message).toMatch(/VT.*GYRD/);
});

test("a tracer more or fewer is another colour", () => {
  const job = onMachine(drawnIn({ base: "GY", tracer: "RD" }), {
    wires: [{ cavity: "X1:3", colour: { base: "GY" } }],
  });
  expect(findingsOf(RULE, job)).toHaveLength(1);
});

test("base and tracer the other way round is told as no more than that", () => {
  const job = onMachine(drawnIn({ base: "RD", tracer: "BU" }), {
    wires: [{ cavity: "X1:3", colour: { base: "BU", tracer: "RD" } }],
  });
  const [found] = findingsOf(RULE, job);
  expect(found?.message).toMatch(/BURD.*RDBU.*order differs.*may be the same wire/);
  const other = onMachine(drawnIn({ base: "RD", tracer: "BU" }), {
    wires: [{ cavity: "X1:3", colour: { base: "BU", tracer: "WH" } }],
  });
  expect(findingsOf(RULE, other)[0]?.message).not.toMatch(/order/);
});

test("green with a yellow tracer is green-and-yellow (IEC 60757: together only GNYE)", () => {
  const job = onMachine(drawnIn({ base: "GNYE" }), {
    wires: [{ cavity: "X1:3", colour: { base: "GN", tracer: "YE" } }],
  });
  expect(findingsOf(RULE, job)).toEqual([]);
});

test("is silent where either side gives no colour", () => {
  const undrawn = onMachine(matched(lampModule()), {
    wires: [{ cavity: "X1:3", colour: { base: "VT" } }],
  });
  const unseen = onMachine(drawnIn({ base: "GY" }), { wires: [{ cavity: "X1:3" }] });
  expect([...findingsOf(RULE, undrawn), ...findingsOf(RULE, unseen)]).toEqual([]);
});
