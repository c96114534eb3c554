import { expect, test } from "vitest";
import { findingsOf, lampModule, matched, testExamplesOfPage } from "../support/check-example.ts";

const RULE = "duplicate-mark";

testExamplesOfPage(RULE);

test("counts the cavities with the mark", () => {
  const cavities = [{ mark: "C" }, { mark: "C" }, { mark: "C" }, { mark: "D" }];
  const found = findingsOf(RULE, matched(lampModule(), cavities, []).job);
  expect(found.map((one) => one.subjects)).toEqual([["X1:C"]]);
  expect(found[0]?.message).toContain("3 cavities marked C");
});
