import { expect, test } from "vitest";
import { findingsOf, lampModule, matched, pageExamples } from "../support/check-example.ts";

const RULE = "cavity-empty";

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

test("tells a blocked cavity from an empty one", () => {
  const cavities = [{ mark: "1", blocked: true }, { mark: "2", empty: true }, { mark: "3" }];
  const found = findingsOf(RULE, matched(lampModule(), cavities).job);
  expect(found.map((one) => one.subjects)).toEqual([
    ["X1:1", "A1:1"],
    ["X1:2", "A1:2"],
  ]);
  expect(found[0]?.message).toContain("is blocked");
  expect(found[1]?.message).toContain("is empty");
});
