import { expect, test } from "vitest";
import { findingsOf, lampModule, matched, testExamplesOfPage } from "../support/check-example.ts";

const RULE = "pin-without-cavity";

testExamplesOfPage(RULE);

test("names the pin and its word", () => {
  const job = matched(lampModule({ "3": "OUT" }), undefined, [["A1:1", "X1:1"]]).job;
  const found = findingsOf(RULE, job);
  expect(found.map((one) => one.subjects)).toEqual([["A1:2"], ["A1:3"]]);
  expect(found[1]?.message).toContain("OUT");
});

test("is silent for a module that nobody has begun to match", () => {
  expect(findingsOf(RULE, lampModule().job)).toEqual([]);
});

test("a free pin whose word says that it is not used needs no cavity", () => {
  const circuit = lampModule();
  const module = circuit.job.diagram.parts.find((part) => part.id === "A1");
  if (module?.kind === "module")
    module.pins.push({ id: "4", printed: "NC" }, { id: "5", printed: "OUT" });
  expect(findingsOf(RULE, matched(circuit).job).map((one) => one.subjects)).toEqual([["A1:5"]]);
});
