/**
 * Jobs in which everything is right, and machines with one real fault, made and measured by code
 * that shares nothing with the checker. Left out of the comparison: warnings and notes about a
 * machine that has a fault, since telling of it is what they are for. The pins that are undecided
 * are predicted, each by the way it was wired, and so is every pin's list of roles.
 */
import { expect, test } from "vitest";
import {
  inWords,
  judgeCorrect,
  judgeFaulty,
  type Verdict,
} from "../support/paper-jobs/verdicts.ts";

const JOBS = 40;
/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20260301);

/** ms: a busy machine takes its time. */
const LONG = 120_000;

const run = (judge: (seed: number) => Verdict): readonly Verdict[] =>
  Array.from({ length: JOBS }, (_, index) => judge(SEED + index));

test(
  "nothing is found in a job that is right, and every pin is what it was wired to be",
  () => {
    const verdicts = run(judgeCorrect);
    expect(verdicts.flatMap(({ mismatches }) => mismatches.map(inWords))).toEqual([]);
    const all = verdicts.reduce((sum, { pins }) => sum + pins.all, 0);
    const undecided = verdicts.flatMap(({ pins }) => pins.undecided);
    const share = undecided.length / all;
    console.info(`${all} pins, undecided ${(100 * share).toFixed(1)} % (seed ${SEED})`);
    expect(undecided).not.toContain("something else");
    // where everything is undecided nothing is ever contradicted; where nothing is, it guesses
    expect(share).toBeGreaterThan(0.05);
    expect(share).toBeLessThan(0.3);
  },
  LONG,
);

test(
  "a real fault on the machine contradicts nothing on the diagram",
  () => {
    const verdicts = run(judgeFaulty);
    expect(verdicts.flatMap(({ mismatches }) => mismatches.map(inWords))).toEqual([]);
  },
  LONG,
);
