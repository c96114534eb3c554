import {
  inWords,
  judgeCorrect,
  judgeDisagreeing,
  judgeFaulty,
  judgeWords,
  type Verdict,
} from "../support/paper-jobs/verdicts.ts";
import type { Bench, Grid } from "./harness.ts";

/** `PINTRUTH_SEED` starts the seeds elsewhere, `PINTRUTH_JOBS` judges another share of the jobs: 1 for all. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
/** So few that a run of every benchmark is not held up by this one; all of them take an hour. */
const FEW = 0.01;
const SHARE = Number(process.env.PINTRUTH_JOBS ?? FEW);
/** Mismatches printed in full, of each kind of job. */
const MOST_TOLD = 25;

const CONTRADICTIONS = [
  "adopted-role-contradicted",
  "cavities-swapped",
  "dead-short",
  "duplicate-link",
  "duplicate-mark",
  "face-mirrored",
  "printed-role-contradicted",
  "reading-contradicts-circuit",
  "reading-contradicts-printed",
  "row-off-by-one",
];

const KINDS: readonly {
  readonly what: string;
  readonly jobs: number;
  readonly judge: (seed: number) => Verdict;
}[] = [
  { what: "right in everything", jobs: 10_000, judge: judgeCorrect },
  { what: "right, on a machine with one fault", jobs: 10_000, judge: judgeFaulty },
  { what: "with one disagreement", jobs: 5_000, judge: judgeDisagreeing },
  { what: "every word at every pin of a drawing", jobs: 10_000, judge: judgeWords },
];

const honesty: Bench = {
  title: "Honesty",
  about:
    "Whole jobs made and measured by code that shares nothing with the checker: drawings wired by recipe, machines with true values of their own, readings from a solver of its own. Missed and extra count findings by rule and chief subject; a false contradiction is an extra one that is a contradiction. Of machines with a fault only contradictions count. Each mismatch is printed with the seed that makes it again.",
  run() {
    const lines = KINDS.map(({ what, jobs, judge }) => {
      const count = Math.max(1, Math.round(jobs * SHARE));
      let [wrong, missed, extra, told, pins, undecided] = [0, 0, 0, 0, 0, 0];
      for (let seed = SEED; seed < SEED + count; seed++) {
        const verdict = judge(seed);
        pins += verdict.pins.all;
        undecided += verdict.pins.undecided;
        for (const mismatch of verdict.mismatches) {
          missed += mismatch.missed.length;
          extra += mismatch.extra.length;
          wrong += mismatch.extra.filter((one) =>
            CONTRADICTIONS.some((rule) => one.startsWith(`${rule} `)),
          ).length;
          if (told++ < MOST_TOLD) console.info(`${what}: ${inWords(mismatch)}`);
        }
      }
      const share = `${((100 * undecided) / pins).toFixed(1)} %`;
      return [what, count, wrong, missed, extra, pins, share].map(String);
    });
    const columns = [
      "jobs",
      "how many",
      "false contradictions",
      "missed",
      "extra",
      "pins",
      "undecided",
    ];
    return Promise.resolve<Grid>({ columns, lines });
  },
};

export default honesty;
