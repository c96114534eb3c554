/**
 * Right jobs into which one disagreement of a known kind was put: the findings are exactly those
 * that follow from it, by rule and chief subject, notes included.
 */
import { expect, test } from "vitest";
import { DISAGREEMENTS } from "../support/paper-jobs/disagreements/index.ts";
import { inWords, judgeDisagreeing, judgeWords } from "../support/paper-jobs/verdicts.ts";

const JOBS = 140;
/** Drawings whose every pin gets every word; so many that rare neighbourhoods come up too. */
const DRAWINGS = 250;
/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20260401);

/** ms: a busy machine takes its time. */
const LONG = 120_000;

test(
  "one disagreement is found, with all that follows from it and nothing else",
  () => {
    const mismatches = Array.from({ length: JOBS }, (_, index) => SEED + index).flatMap(
      (seed) => judgeDisagreeing(seed).mismatches,
    );
    expect(mismatches.map(inWords)).toEqual([]);
  },
  LONG,
);

test(
  "every word is contradicted at every pin where it can't stand, and at no other",
  () => {
    const verdicts = Array.from({ length: DRAWINGS }, (_, index) => judgeWords(SEED + index));
    expect(verdicts.flatMap(({ mismatches }) => mismatches.map(inWords))).toEqual([]);
    expect(verdicts.reduce((sum, { pins }) => sum + pins.all, 0)).toBeGreaterThan(10 * DRAWINGS);
  },
  LONG,
);

test("every kind of disagreement gets its turn several times", () => {
  expect(JOBS).toBeGreaterThanOrEqual(3 * DISAGREEMENTS.length);
});
