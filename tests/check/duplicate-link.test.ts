import { expect, test } from "vitest";
import { findingsOf, lampModule, matched, pageExamples } from "../support/check-example.ts";

const RULE = "duplicate-link";

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

test("finds a pin tied twice and a cavity tied twice", () => {
  const job = matched(lampModule(), undefined, [
    ["A1:1", "X1:1"],
    ["A1:1", "X1:2"],
    ["A1:3", "X1:2"],
  ]).job;
  expect(findingsOf(RULE, job).map((one) => one.subjects)).toEqual([
    ["A1:1", "X1:1", "X1:2"],
    ["X1:2", "A1:1", "A1:3"],
  ]);
});
