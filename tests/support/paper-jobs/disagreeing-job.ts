import { seededRandom } from "../../../src/base/index.ts";
import type { Finding } from "../../../src/check/index.ts";
import { correctJob, foundAsDrawn } from "./correct-job.ts";
import { forgetAllReadings } from "./disagreements/disagreement.ts";
import { DISAGREEMENTS, type Disagreement } from "./disagreements/index.ts";
import { drawnRight } from "./drawing.ts";
import type { PaperJob } from "./paper-job.ts";

export interface DisagreeingJob {
  readonly paper: PaperJob;
  readonly name: string;
  /** `rule chief-subject` of everything that has to be found, sorted. */
  readonly expected: readonly string[];
  /** The rules whose findings are compared; null: all of them. */
  readonly rules: readonly string[] | null;
}

/** Jobs tried for a disagreement, some of which hardly any job has a place for. */
const MOST_TRIED = 5000;
/** So far from each other are the seeds of the jobs tried, and farther than any run is long. */
const APART = 1_000_003;

/**
 * A right job with one disagreement put in. The kinds take turns with the seed, so that each is put
 * in as often as any other; `paper` is the right job of that seed, and others are tried after it.
 */
export function withOneDisagreement(paper: PaperJob, seed: number): DisagreeingJob {
  const kind = DISAGREEMENTS[seed % DISAGREEMENTS.length];
  if (!kind) throw new Error("no kind of disagreement");
  for (let tried = 0; tried < MOST_TRIED; tried++) {
    const own = seed + tried * APART;
    const copy = tried === 0 ? copied(paper) : rightJob(own, kind);
    if (kind.forgetsReadings) forgetAllReadings(copy);
    const found = kind.inject(seededRandom(own), copy);
    if (found === null) continue;
    const expected = kind.rules ? found : [...found, ...undecided(copy)];
    return {
      paper: copy,
      name: kind.name,
      expected: expected.toSorted(),
      rules: kind.rules ?? null,
    };
  }
  throw new Error(`no job has a place for ${kind.name}`);
}

const copied = (paper: PaperJob): PaperJob => ({ ...paper, job: structuredClone(paper.job) });

/** Another right job; without readings where none would be kept. */
function rightJob(seed: number, { forgetsReadings }: Disagreement): PaperJob {
  if (!forgetsReadings) return correctJob(seed);
  const random = seededRandom(seed);
  const paper = drawnRight(random);
  foundAsDrawn(random, paper);
  return paper;
}

/** Notes that are right in any case: pins at which the page lets several roles stand. */
export const undecided = ({ pins }: PaperJob): readonly string[] =>
  pins.filter(({ fits }) => fits.length > 1).map(({ pin }) => `role-undecided ${pin}`);

/** Findings in the same form. */
export const foundIn = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ rule, subjects }) => `${rule} ${chiefOf(rule, subjects[0] ?? "")}`).sort();

/** A loose end is told by the part or by its pin; which of them is a matter of wording. */
const chiefOf = (rule: string, subject: string): string =>
  rule === "loose-end" && subject.includes(":") ? subject.slice(0, subject.indexOf(":")) : subject;
