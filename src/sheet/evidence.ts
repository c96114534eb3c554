import { formatQuantity } from "../base/index.ts";
import type { Id, Job, Reading } from "../job/index.ts";
import {
  judgeReading,
  meterEvidence,
  type ReadingVerdict,
  wordsForSetup,
} from "../readings/index.ts";
import type { CavityFacts } from "./cavity-facts.ts";

/** A reading taken at a cavity and how it compares with what a healthy machine shows. */
export interface JudgedEvidence {
  readonly reading: Reading;
  readonly verdict: ReadingVerdict;
  /** `24.10 V` */
  readonly value: string;
  /** `14 Nov`, or empty when the time was not kept. */
  readonly day: string;
  /** `as expected`, `not as expected`, ... */
  readonly verdictWords: string;
  /** Quantity, probes and conditions. */
  readonly setupWords: string;
}

export const READING_VERDICT_WORDS: Readonly<Record<ReadingVerdict, string>> = {
  inside: "as expected",
  outside: "not as expected",
  "not-comparable": "nothing to compare with",
  invalid: "not a valid reading",
};

/** Newest first. */
export function evidenceAt(job: Job, machine: Id, facts: CavityFacts): JudgedEvidence[] {
  return [...facts.readings].reverse().map((reading) => judgedEvidence(job, machine, reading));
}

export function judgedEvidence(job: Job, machine: Id, reading: Reading): JudgedEvidence {
  const { verdict } = judgeReading(job, machine, reading);
  return {
    reading,
    verdict,
    value: formatQuantity(reading.value, reading.quantity),
    day: dayOf(reading.at),
    verdictWords: READING_VERDICT_WORDS[verdict],
    setupWords: wordsForSetup(job, reading),
  };
}

/**
 * The reading that confirms what the circuit says of the cavity: the newest one that shows
 * something present there, as expected, which the role needs. Null while none does: open-circuit
 * volts, 0 V and OL confirm nothing.
 */
export function settlingEvidence(
  job: Job,
  machine: Id,
  facts: CavityFacts,
  evidence: readonly JudgedEvidence[],
): JudgedEvidence | null {
  const { role } = facts;
  if (!role?.cavity || evidence.length === 0) return null;
  const { fits, confirmedBy } = meterEvidence(job, machine, role.cavity);
  if (!role.fits.some((one) => fits.includes(one))) return null;
  const confirms = ({ reading, verdict }: JudgedEvidence) =>
    verdict === "inside" && confirmedBy.includes(reading.id);
  return evidence.find(confirms) ?? null;
}

/**
 * The reading to show first: the one that settled what the cavity is, else the newest that is not
 * as expected, else the newest.
 */
export const chiefEvidence = (
  settling: JudgedEvidence | null,
  evidence: readonly JudgedEvidence[],
): JudgedEvidence | null =>
  settling ?? evidence.find((one) => one.verdict === "outside") ?? evidence[0] ?? null;

const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/** `14 Nov` of an ISO 8601 time as written; empty for anything else. */
export function dayOf(at: string | undefined): string {
  const found = /^\d{4}-(\d\d)-(\d\d)/.exec(at ?? "");
  const month = MONTHS[Number(found?.[1]) - 1];
  return found && month ? `${Number(found[2])} ${month}` : "";
}

/** `14 Nov 2025` of an ISO 8601 date; the text itself for anything else. */
export function longDay(date: string): string {
  const day = dayOf(date);
  return day === "" ? date : `${day} ${date.slice(0, 4)}`;
}
