import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { CircuitBuilder } from "../support/circuit-builder.ts";

const RULE = "nothing-traced";

testExamplesOfPage(RULE);

const battery = () => new CircuitBuilder().part("battery", "G1").part("ground", "GND1");

const placed = () => {
  const circuit = battery().module("A1", { "1": null, "2": null });
  for (let n = 1; n <= 22; n++) circuit.part("fuse", `F${n}`);
  return circuit;
};

test("many parts without a wire are one finding, about the module, and no wall of warnings", () => {
  const { job } = placed();
  const [only, ...others] = findingsOf(RULE, job);
  expect(others).toEqual([]);
  expect(only?.subjects).toEqual(["A1"]);
  expect(only?.message).toMatch(/^25 parts are placed and no wire is drawn yet/);
  expect(checkJob(job, "machine1").summary).toMatchObject({ contradictions: 0, warnings: 0 });
});

test("with the first wire it is gone, and each part that lacks one is told", () => {
  const { job } = placed().wire("G1:+ F1:1");
  expect(findingsOf(RULE, job)).toEqual([]);
  const loose = findingsOf("loose-end", job).flatMap(({ subjects }) => subjects);
  expect(loose).toContain("F2");
  expect(loose).not.toContain("A1");
});

test("without a module it is about the first part; a part alone is nothing to be told", () => {
  expect(findingsOf(RULE, battery().job).map(({ subjects }) => subjects)).toEqual([["G1"]]);
  const { job } = battery();
  const alone = { ...job, diagram: { ...job.diagram, parts: job.diagram.parts.slice(0, 1) } };
  expect(findingsOf(RULE, alone)).toEqual([]);
});
