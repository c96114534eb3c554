/** Many verdicts in numbers that can be added to one another, wherever they were worked out. */
import { inWords, ruleOf, type Verdict } from "./verdicts.ts";

export interface Tally {
  jobs: number;
  missed: number;
  extra: number;
  falseContradictions: number;
  pins: number;
  /** Undecided pins, by why they are. */
  readonly undecided: Count;
  /** Faults or disagreements put in, by name, and how many of them were not told just as they should be. */
  readonly injected: Count;
  readonly notWhole: Count;
  /** Findings that had to be told of what was put in, by rule; those missed, and those too many. */
  readonly byRule: Count;
  readonly missedByRule: Count;
  readonly extraByRule: Count;
  /** Each mismatch in words, with its seed. */
  readonly mismatches: string[];
}

export type Count = Record<string, number>;

const CONTRADICTIONS: ReadonlySet<string> = new Set([
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
]);

export const noTally = (): Tally => ({
  jobs: 0,
  missed: 0,
  extra: 0,
  falseContradictions: 0,
  pins: 0,
  undecided: {},
  injected: {},
  notWhole: {},
  byRule: {},
  missedByRule: {},
  extraByRule: {},
  mismatches: [],
});

const addEach = (count: Count, names: readonly string[]): void => {
  for (const name of names) count[name] = (count[name] ?? 0) + 1;
};

export function addVerdict(tally: Tally, { mismatches, pins, injected }: Verdict): void {
  const missed = mismatches.flatMap((one) => one.missed).map(ruleOf);
  const extra = mismatches.flatMap((one) => one.extra).map(ruleOf);
  tally.jobs++;
  tally.missed += missed.length;
  tally.extra += extra.length;
  tally.falseContradictions += extra.filter((rule) => CONTRADICTIONS.has(rule)).length;
  tally.pins += pins.all;
  addEach(tally.undecided, pins.undecided);
  tally.mismatches.push(...mismatches.map(inWords));
  if (injected === null) return;
  addEach(tally.injected, [injected.name]);
  if (mismatches.length > 0) addEach(tally.notWhole, [injected.name]);
  addEach(tally.byRule, injected.rules);
  addEach(tally.missedByRule, missed);
  addEach(tally.extraByRule, extra);
}

/** Adds another tally of the same kind of jobs. */
export function addTally(to: Tally, other: Tally): void {
  const numbers = ["jobs", "missed", "extra", "falseContradictions", "pins"] as const;
  for (const field of numbers) to[field] += other[field];
  const counts = [
    "undecided",
    "injected",
    "notWhole",
    "byRule",
    "missedByRule",
    "extraByRule",
  ] as const;
  for (const field of counts)
    for (const [name, count] of Object.entries(other[field]))
      to[field][name] = (to[field][name] ?? 0) + count;
  to.mismatches.push(...other.mismatches);
}
