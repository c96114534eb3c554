import { expect, test } from "vitest";
import { findingsOf, lampModule, matched, pageExamples } from "../support/check-example.ts";

const RULE = "duplicate-mark";

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

test("counts the cavities with the mark", () => {
  const cavities = [{ mark: "C" }, { mark: "C" }, { mark: "C" }, { mark: "D" }];
  const found = findingsOf(RULE, matched(lampModule(), cavities, []).job);
  expect(found.map((one) => one.subjects)).toEqual([["X1:C"]]);
  expect(found[0]?.message).toContain("3 cavities marked C");
});
