import { formatQuantity } from "../base/index.ts";
import type { Id, Job, Reading } from "../job/index.ts";
import { judgeReading, type ReadingVerdict, wordsForSetup } from "../readings/index.ts";
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
 * The reading that a confirmed cavity is confirmed by: the newest one that came out as expected.
 * Null unless the meter's own verdict is that the word agrees or that it is contradicted.
 */
export function settlingEvidence(
  facts: CavityFacts,
  evidence: readonly JudgedEvidence[],
): JudgedEvidence | null {
  const verdict = facts.role?.meterVerdict;
  if (verdict !== "agrees" && verdict !== "contradicted") return null;
  return evidence.find((one) => one.verdict === "inside") ?? evidence[0] ?? null;
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
