import { expect, test } from "vitest";
import { findingsOf, lampModule, testExamplesOfPage } from "../support/check-example.ts";

const RULE = "printed-role-contradicted";

testExamplesOfPage(RULE);

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

test("a word at a pin without a wire may be one whose wire is not drawn yet: it can be marked so", () => {
  const circuit = lampModule();
  const module = circuit.job.diagram.parts.find((part) => part.id === "A1");
  if (module?.kind !== "module") throw new Error("no module");
  module.pins.push({ id: "4", printed: "OUT" });
  const [found, ...more] = findingsOf(RULE, circuit.job);
  expect(more).toEqual([]);
  expect(found?.message).toMatch(/^No wire is drawn at pin A1:4\./);
  expect(found?.corrections?.[0]).toEqual({ does: "mark-as-going-on", pins: ["A1:4"] });
});
