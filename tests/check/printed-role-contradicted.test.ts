import { expect, test } from "vitest";
import { findingsOf, lampModule, pageExamples } from "../support/check-example.ts";

const RULE = "printed-role-contradicted";

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

test("names the pin, the path and both words", () => {
  const [found, ...more] = findingsOf(RULE, lampModule({ "1": "GND", "3": "OUT" }).job);
  expect(more).toEqual([]);
  expect(found?.severity).toBe("contradiction");
  expect(found?.subjects).toEqual(["A1:1"]);
  expect(found?.because).toEqual(["W3", "F1", "W2", "G1"]);
  expect(found?.message).toMatch(/permanent feed.*GND/);
});

test("a word that nobody knows is no contradiction", () => {
  expect(findingsOf(RULE, lampModule({ "1": "XQZ" }).job)).toEqual([]);
});

test("a word with several meanings is contradicted by none that fits", () => {
  expect(findingsOf(RULE, lampModule({ "3": "SIG" }).job)).toEqual([]);
  expect(findingsOf(RULE, lampModule({ "1": "SIG" }).job)).toHaveLength(1);
});

test("a number that only repeats the pin's mark is no word", () => {
  const circuit = lampModule();
  const module = circuit.job.diagram.parts.find((part) => part.id === "A1");
  if (module?.kind !== "module") throw new Error("no module");
  module.pins.push({ id: "31", printed: "31" });
  expect(findingsOf(RULE, circuit.wire("A1:31 F1:2").job)).toEqual([]);
});

test("a word that the user taught this job counts before the lexicon", () => {
  const { job } = lampModule({ "1": "OUT" });
  expect(findingsOf(RULE, job)).toHaveLength(1);
  job.words = [{ printed: "out", role: "supply" }];
  expect(findingsOf(RULE, job)).toEqual([]);
});
