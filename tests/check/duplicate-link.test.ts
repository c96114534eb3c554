import { expect, test } from "vitest";
import { findingsOf, lampModule, matched, testExamplesOfPage } from "../support/check-example.ts";

const RULE = "duplicate-link";

testExamplesOfPage(RULE);

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
