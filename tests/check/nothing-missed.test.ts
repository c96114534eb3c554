/**
 * Right jobs into which one disagreement of a known kind was put: the findings are exactly those
 * that follow from it, by rule and chief subject, notes included.
 */
import { expect, test } from "vitest";
import { RULES } from "../../src/check/rules/index.ts";
import { DISAGREEMENTS } from "../support/paper-jobs/disagreements/index.ts";
import { addVerdict, noTally } from "../support/paper-jobs/tally.ts";
import { inWords, judgeDisagreeing, judgeWords } from "../support/paper-jobs/verdicts.ts";

/** The kinds take turns, so that each is put in this many times. */
const TIMES = 3;
const JOBS = TIMES * DISAGREEMENTS.length;
/** Drawings whose every pin gets every word; so many that rare neighbourhoods come up too. */
const DRAWINGS = 250;
/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20260401);

/** ms: a busy machine takes its time. */
const LONG = 120_000;

test(
  "one disagreement is found, with all that follows from it and nothing else",
  () => {
    const tally = noTally();
    for (let seed = SEED; seed < SEED + JOBS; seed++) addVerdict(tally, judgeDisagreeing(seed));
    expect(tally.mismatches).toEqual([]);
    const named = DISAGREEMENTS.map(({ name }) => [name, TIMES] as const);
    expect(tally.injected).toEqual(Object.fromEntries(named));
    // every rule has had something to tell of
    expect(Object.keys(tally.byRule).sort()).toEqual(RULES.map(({ id }) => id).sort());
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
