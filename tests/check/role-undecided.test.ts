import { expect, test } from "vitest";
import { findingsOf, lampModule, testExamplesOfPage } from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

const RULE = "role-undecided";

testExamplesOfPage(RULE);

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
  expect(findingsOf(RULE, circuit.job)[0]?.message).toContain(
    "can be almost anything, as far as its line is traced",
  );
});

test("a module without any wire yet is one note, not one a pin", () => {
  const circuit = withBattery().module("A1", { "1": "PWR", "2": "GND", "3": null });
  const found = findingsOf(RULE, circuit.job);
  expect(found.map((one) => one.subjects)).toEqual([["A1"]]);
  expect(found[0]?.message).toContain("No wire is traced at module A1 yet");
});

test("a module that is half traced: one note for its pins without a wire, and one for each traced pin", () => {
  const circuit = lampModule();
  const module = circuit.job.diagram.parts.find((part) => part.id === "A1");
  if (module?.kind !== "module") throw new Error("no module");
  module.pins.push({ id: "4", printed: "IGN" }, { id: "5" });
  const traced = findingsOf(RULE, circuit.job);
  expect(traced.map((one) => one.subjects)).toEqual([]);
  module.untraced = true;
  const found = findingsOf(RULE, structuredClone(circuit.job));
  expect(found[0]?.subjects).toEqual(["A1"]);
  expect(found[0]?.message).toContain("No line is traced yet at pins 4 and 5 of module");
  expect(found.slice(1).map((one) => one.subjects)).toEqual([["A1:2"]]);
});
