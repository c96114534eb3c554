import { expect, test } from "vitest";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { measuredAs, ohms, volts } from "../support/four-way-plug.ts";
import { expectToldOrSilent } from "../support/mislaid-telling.ts";

/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20261128);

const RULE = "row-off-by-one";

testExamplesOfPage(RULE);

const off = [volts("2", 25.1), volts("3", 0.01), ohms("3", 0.2), ohms("4", 8.1)];

test("says which row and which way, and how much agrees", () => {
  const [found] = findingsOf(RULE, measuredAs(off));
  expect(found?.subjects.slice(0, 5)).toEqual(["X1", "X1:1", "X1:2", "X1:3", "X1:4"]);
  expect(found?.message).toMatch(
    /row 1 to 4 .* what was noted at 2 belongs to 1 \(4 readings agree; as drawn 3 readings do not\)/,
  );
});

test("a reading beyond the end of the row can't have been taken", () => {
  expect(findingsOf(RULE, measuredAs([...off, volts("1", 0.01)]))).toEqual([]);
});

test("a row off by one on a true machine: told, or not told, but never anything else", () => {
  expectToldOrSilent(RULE, "shifted", SEED);
}, 120_000);
