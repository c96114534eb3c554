import { expect, test } from "vitest";
import { findingsOf, lampModule, pageExamples } from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

const RULE = "role-undecided";

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

test("names the roles and the reading that separates them", () => {
  const circuit = lampModule().part("ground", "GND3");
  const module = circuit.job.diagram.parts.find((part) => part.id === "A1");
  if (module?.kind !== "module") throw new Error("no module");
  module.pins.push({ id: "4" });
  const found = findingsOf(RULE, circuit.wire("A1:4 GND3:1").job);
  expect(found.map((one) => one.subjects)).toEqual([["A1:2"], ["A1:4"]]);
  expect(found[1]?.message).toMatch(/a ground or an input.*amps through pin A1:4/);
  expect(found[1]?.severity).toBe("note");
});

test("says that an untraced line is to be traced", () => {
  const circuit = withBattery().module("A1", { "1": null }).part("offpage", "X9").wire("A1:1 X9:1");
  expect(findingsOf(RULE, circuit.job)[0]?.message).toContain("not traced to its end");
});
