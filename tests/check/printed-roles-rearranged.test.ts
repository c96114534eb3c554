import { expect, test } from "vitest";
import { findingsOf, lampModule, pageExamples } from "../support/check-example.ts";

const RULE = "printed-roles-rearranged";

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

test("gives the pin that each word of a rotation belongs to", () => {
  const [found] = findingsOf(RULE, lampModule({ "1": "OUT", "2": "PWR", "3": "GND" }).job);
  expect(found?.subjects).toEqual(["A1", "A1:1", "A1:2", "A1:3"]);
  expect(found?.message).toContain("PWR belongs to A1:1 (stands at A1:2)");
  expect(found?.message).toContain("GND belongs to A1:2 (stands at A1:3)");
  expect(found?.message).toContain("OUT belongs to A1:3 (stands at A1:1)");
});

test("moves only the two words of an exchange", () => {
  const [found] = findingsOf(RULE, lampModule({ "1": "PWR", "2": "OUT", "3": "GND" }).job);
  expect(found?.subjects).toEqual(["A1", "A1:2", "A1:3"]);
});

test("is silent where no arrangement of the words fits", () => {
  expect(findingsOf(RULE, lampModule({ "1": "GND", "2": "GND", "3": "OUT" }).job)).toEqual([]);
});
