import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { isMainThread, parentPort, Worker } from "node:worker_threads";
import { DISAGREEMENTS } from "../support/paper-jobs/disagreements/index.ts";
import { FAULT_NAMES } from "../support/paper-jobs/faults.ts";
import { addTally, addVerdict, noTally, type Tally } from "../support/paper-jobs/tally.ts";
import { WHY_UNDECIDED } from "../support/paper-jobs/undecided.ts";
import {
  judgeCorrect,
  judgeDisagreeing,
  judgeFaulty,
  judgeWords,
  type Verdict,
} from "../support/paper-jobs/verdicts.ts";
import type { Bench, Grid } from "./harness.ts";

/** `PINTRUTH_SEED` starts the seeds elsewhere, `PINTRUTH_JOBS` judges another share of the jobs: 1 for all. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
const SHARE = Number(process.env.PINTRUTH_JOBS ?? 0.1);
/** Mismatches printed in full, of each kind of job. */
const MOST_TOLD = 100;
/** Seeds that a worker judges at a time. */
const BATCH = 20;
/** MB for what is just made and soon forgotten, as nearly all here is: less tidying up. */
const YOUNG = 192;

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

/** Jobs of each kind that are judged. */
const COUNTS = KINDS.map(({ jobs }) => Math.max(1, Math.round(jobs * SHARE)));

/** The seeds from `first` up to but not including `end`: of each kind of job those that it needs. */
interface Batch {
  readonly first: number;
  readonly end: number;
}

/** All kinds of one seed one after the other: they are made of the same right job. */
function judged({ first, end }: Batch): readonly Tally[] {
  const tallies = KINDS.map(noTally);
  for (let seed = first; seed < end; seed++) {
    KINDS.forEach(({ judge }, kind) => {
      const tally = tallies[kind];
      if (tally && seed < SEED + (COUNTS[kind] ?? 0)) addVerdict(tally, judge(seed));
    });
  }
  return tallies;
}

/** Gives the batches to as many workers as there are cores; tallies in the order of the seeds. */
async function judgedByAll(batches: readonly Batch[]): Promise<readonly (readonly Tally[])[]> {
  const found: (readonly Tally[])[] = [];
  let next = 0;
  const work = () =>
    new Promise<void>((resolve, reject) => {
      const worker = new Worker(fileURLToPath(import.meta.url), {
        resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
      });
      let own = -1;
      const give = () => {
        own = next++;
        const batch = batches[own];
        if (batch) return worker.postMessage(batch);
        resolve(worker.terminate().then(() => undefined));
      };
      worker.on("message", (tallies: readonly Tally[]) => {
        found[own] = tallies;
        if (own % 25 === 0) console.info(`... seeds to ${batches[own]?.end}`);
        give();
      });
      worker.on("error", reject);
      give();
    });
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  return found;
}

if (!isMainThread) parentPort?.on("message", (batch) => parentPort?.postMessage(judged(batch)));

const numbers = (...values: readonly (number | undefined)[]) =>
  values.map((value) => String(value ?? 0));

/** Kinds of jobs, one a line. */
function kindsTable(tallies: readonly Tally[]): Grid {
  const columns = ["jobs", "how many", "false contradictions", "missed", "extra"];
  const lines = tallies.map(({ jobs, falseContradictions, missed, extra }, kind) => [
    KINDS[kind]?.what ?? "",
    ...numbers(jobs, falseContradictions, missed, extra),
  ]);
  return { columns, lines };
}

function undecidedTable({ pins, undecided }: Tally): Grid {
  const share = (count: number) => `${((100 * count) / pins).toFixed(1)} %`;
  const all = Object.values(undecided).reduce((sum, count) => sum + count, 0);
  const lines = Object.keys(WHY_UNDECIDED).map((why) => {
    const count = undecided[why] ?? 0;
    return [why, String(count), share(count)];
  });
  return {
    columns: ["pins of right jobs that are undecided", "pins", `of ${pins}`],
    lines: [...lines, ["all of them", String(all), share(all)]],
  };
}

/** How often each thing was put in, and how often the verdict was just what it had to be. */
function injectedTable(
  names: readonly string[],
  { injected, notWhole }: Tally,
  [what, verdict]: readonly [string, string],
): Grid {
  const lines = names.map((name) => {
    const [times = 0, other = 0] = [injected[name], notWhole[name]];
    return [name, ...numbers(times, times - other)];
  });
  return { columns: [what, "times", verdict], lines };
}

function rulesTable({ byRule, missedByRule, extraByRule }: Tally): Grid {
  const rules = [...new Set([...Object.keys(byRule), ...Object.keys(extraByRule)])].sort();
  const lines = rules.map((rule) => {
    const [all = 0, missed = 0] = [byRule[rule], missedByRule[rule]];
    return [rule, ...numbers(all, all - missed, missed, extraByRule[rule])];
  });
  return { columns: ["rule", "to be told", "told", "missed", "extra"], lines };
}

const honesty: Bench = {
  title: "Honesty",
  about:
    "Whole jobs made and measured by code that shares nothing with the checker: drawings wired by recipe, machines with true values of their own, readings from a solver of its own. Missed and extra count findings by rule and chief subject; a false contradiction is an extra one that is a contradiction. Of machines with a fault only contradictions count. What nobody could see, as two grounds exchanged, is not put in. Each mismatch is printed with the seed that makes it again.",
  async run() {
    const end = SEED + Math.max(...COUNTS);
    const batches: Batch[] = [];
    for (let first = SEED; first < end; first += BATCH)
      batches.push({ first, end: Math.min(end, first + BATCH) });
    const tallies = KINDS.map(noTally);
    for (const found of await judgedByAll(batches))
      for (const [kind, tally] of tallies.entries()) addTally(tally, found[kind] ?? noTally());
    tallies.forEach(({ mismatches }, kind) => {
      for (const one of mismatches.slice(0, MOST_TOLD))
        console.info(`${KINDS[kind]?.what}: ${one}`);
    });
    const [right = noTally(), faulty = noTally(), disagreeing = noTally()] = tallies;
    const kinds = DISAGREEMENTS.map(({ name }) => name);
    return [
      kindsTable(tallies),
      undecidedTable(right),
      injectedTable(FAULT_NAMES, faulty, ["fault of the machine", "nothing contradicted"]),
      injectedTable(kinds, disagreeing, ["put in", "told with all that follows, nothing else"]),
      rulesTable(disagreeing),
    ];
  },
};

export default honesty;
