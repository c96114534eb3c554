import { expect, test } from "vitest";
import { findingsOf, lampModule, matched, testExamplesOfPage } from "../support/check-example.ts";

const RULE = "cavity-without-pin";

testExamplesOfPage(RULE);

test("names the cavity", () => {
  const job = matched(lampModule(), undefined, [
    ["A1:1", "X1:1"],
    ["A1:2", "X1:2"],
  ]).job;
  expect(findingsOf(RULE, job).map((one) => one.subjects)).toEqual([["X1:3"]]);
});

test("is silent for blocked and empty cavities", () => {
  const cavities = [{ mark: "1" }, { mark: "2", blocked: true }, { mark: "3", empty: true }];
  const job = matched(lampModule(), cavities, [["A1:1", "X1:1"]]).job;
  expect(findingsOf(RULE, job)).toEqual([]);
});
