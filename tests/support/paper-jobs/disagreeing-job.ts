import { seededRandom } from "../../../src/base/index.ts";
import type { Finding } from "../../../src/check/index.ts";
import { DISAGREEMENTS } from "./disagreements/index.ts";
import type { PaperJob } from "./paper-job.ts";

export interface DisagreeingJob {
  readonly paper: PaperJob;
  readonly name: string;
  /** `rule chief-subject` of everything that has to be found, sorted. */
  readonly expected: readonly string[];
  /** The rules whose findings are compared; null: all of them. */
  readonly rules: readonly string[] | null;
}

/** The same job with one disagreement put in; the kinds take turns with the seed. */
export function withOneDisagreement(paper: PaperJob, seed: number): DisagreeingJob {
  const random = seededRandom(seed);
  for (let turn = seed; ; turn++) {
    const kind = DISAGREEMENTS[turn % DISAGREEMENTS.length];
    if (!kind) throw new Error("no kind of disagreement");
    const copy: PaperJob = { ...paper, job: structuredClone(paper.job) };
    const found = kind.inject(random, copy);
    if (found === null) continue;
    const expected = kind.rules ? found : [...found, ...undecided(copy)];
    return {
      paper: copy,
      name: kind.name,
      expected: expected.toSorted(),
      rules: kind.rules ?? null,
    };
  }
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
