import { formatQuantity } from "../base/index.ts";
import { type Circuit, circuitOf } from "../circuit/index.ts";
import { type Id, isFixedProbe, type Job, ownerOf, type Reading } from "../job/index.ts";
import {
  type JudgedReading,
  judgeReading,
  meterEvidence,
  phrasesForWhen,
  type ReadingVerdict,
  wordsForPrediction,
  wordsForProbe,
  wordsForSetup,
} from "../readings/index.ts";
import { rolesInWords } from "../roles/index.ts";
import type { CavityFacts } from "./cavity-facts.ts";
import { PLUGGED_IN } from "./text.ts";

/** A reading and how it compares with what a healthy machine shows. */
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

/**
 * How directly a reading speaks of the cavity. `harness`: from the unplugged cavity to chassis or
 * battery, as a sheet would have it taken; `fixed`: from there to chassis or battery in another
 * way; `between`: to another pin, of which it speaks as much.
 */
export type EvidenceReach = "harness" | "fixed" | "between";

/** A reading as seen from the cavity at hand. */
export interface CavityEvidence extends JudgedEvidence {
  readonly reach: EvidenceReach;
  /** `to chassis`, `from A1 pin 1` */
  readonly between: string;
  /** What to know besides: drop, lamp, positions away from rest, what is unplugged or removed. */
  readonly conditions: readonly string[];
  /** `A1 plugged in`: modules of the cavity that a sheet would have unplugged. */
  readonly plugged: readonly string[];
  /** What a healthy machine shows in this very set-up; empty where nothing can be compared. */
  readonly should: string;
  readonly judged: JudgedReading;
}

/** What was measured at a cavity and which reading says most about it. */
export interface MeterPicture {
  /** Newest first. */
  readonly evidence: readonly CavityEvidence[];
  /** The reading that confirms what the circuit says; null while none does. */
  readonly settledBy: CavityEvidence | null;
  /** The reading to show first; null where nothing was measured. */
  readonly chief: CavityEvidence | null;
  /** `confirmed`, `fits ground or input`, `not as expected`, ... of the chief reading. */
  readonly chiefWords: string;
}

export const READING_VERDICT_WORDS: Readonly<Record<ReadingVerdict, string>> = {
  inside: "as expected",
  outside: "not as expected",
  "not-comparable": "nothing to compare with",
  invalid: "not a valid reading",
};

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
 * Puts the readings of one cavity together. One confirms when it shows something present there, as
 * expected, and either the circuit leaves one role which that allows, or circuit and meter together
 * leave one: open-circuit volts, 0 V and OL confirm nothing, nor does what two roles would show.
 */
export function meterPicture(job: Job, machine: Id, facts: CavityFacts): MeterPicture {
  const evidence = [...facts.readings]
    .reverse()
    .map((reading) => cavityEvidence(job, machine, facts, reading));
  const first = [...evidence].sort(byWeight)[0] ?? null;
  const { role } = facts;
  const plain = { evidence, settledBy: null, chief: first, chiefWords: first?.verdictWords ?? "" };
  if (!role?.cavity || !first) return plain;
  const { fits, confirmedBy } = meterEvidence(job, machine, role.cavity);
  const shows = ({ reading, verdict }: CavityEvidence) =>
    verdict === "inside" && confirmedBy.includes(reading.id);
  const left = role.fits.filter((one) => fits.includes(one));
  if (left.length === 1) {
    const settledBy = evidence.find(shows) ?? null;
    return settledBy ? { evidence, settledBy, chief: settledBy, chiefWords: "confirmed" } : plain;
  }
  const isOpen = left.length > 1 && shows(first);
  return isOpen ? { ...plain, chiefWords: `fits ${rolesInWords(left)}` } : plain;
}

const REACH: readonly EvidenceReach[] = ["harness", "fixed", "between"];
const WEIGHT: readonly ReadingVerdict[] = ["outside", "inside", "not-comparable", "invalid"];

/** What is no valid reading last, then what speaks of this cavity alone, then what speaks of a fault. */
function byWeight(a: CavityEvidence, b: CavityEvidence): number {
  return (
    Number(a.verdict === "invalid") - Number(b.verdict === "invalid") ||
    REACH.indexOf(a.reach) - REACH.indexOf(b.reach) ||
    WEIGHT.indexOf(a.verdict) - WEIGHT.indexOf(b.verdict)
  );
}

function cavityEvidence(
  job: Job,
  machine: Id,
  facts: CavityFacts,
  reading: Reading,
): CavityEvidence {
  const { quantity, red, black, when } = reading;
  const judged = judgeReading(job, machine, reading);
  const isHere = (probe: string) => probe === facts.ref || facts.pins.includes(probe);
  const other = isHere(red) ? black : red;
  const plugged = modulesOf(circuitOf(job, machine), facts).filter(
    (id) => !when.unplugged?.includes(id),
  );
  const isUsual = (quantity === "volts" || quantity === "ohms") && plugged.length === 0;
  return {
    ...judgedEvidence(job, machine, reading),
    judged,
    reach: !isFixedProbe(other) ? "between" : isUsual ? "harness" : "fixed",
    between: `${other === black ? "to" : "from"} ${wordsForProbe(job, other)}`,
    conditions: [
      ...loadPhrases(reading),
      ...phrasesForWhen(job, {
        ...when,
        switches: awayFromRest(circuitOf(job, machine), when.switches ?? {}),
      }),
    ],
    plugged: plugged.map((id) => `${id} ${PLUGGED_IN}`),
    should:
      judged.verdict === "inside" || judged.verdict === "outside"
        ? wordsForPrediction(judged, quantity)
        : "",
  };
}

/** What the figures alone don't tell of how they are measured. */
export const loadPhrases = ({ quantity, with: tool }: Pick<Reading, "quantity" | "with">) => [
  ...(quantity === "drop" ? ["drop under load"] : []),
  ...(tool === "test-lamp" ? ["test lamp as load"] : []),
];

function modulesOf({ parts }: Circuit, { pins }: CavityFacts): Id[] {
  const owners = new Set(pins.map(ownerOf));
  return parts
    .filter((part) => part.kind === "module" && owners.has(part.id))
    .map((part) => part.id);
}

/** A switch that is where it is left says nothing by being named. */
function awayFromRest(
  { parts }: Circuit,
  switches: Readonly<Record<Id, string>>,
): Record<Id, string> {
  const rest = (id: Id) => {
    const part = parts.find((one) => one.id === id);
    return part?.kind === "switch" ? part.rest : undefined;
  };
  return Object.fromEntries(Object.entries(switches).filter(([id, at]) => at !== rest(id)));
}

/** `11.70 V from A1 pin 1, A1 plugged in`: a reading that stands beside the chief one, in a line. */
export const evidenceInWords = (one: CavityEvidence): string =>
  `${[`${one.value} ${one.between}`, ...one.conditions, ...one.plugged].join(", ")}: ${one.verdictWords}`;

/** Readings beside the chief one that are named where they speak of a fault. */
const MOST_NAMED = 2;

/** What stands under the chief reading: some named, the rest counted (`2 more`, empty for none). */
export function besidesChief({ evidence, chief }: MeterPicture): {
  readonly named: readonly CavityEvidence[];
  readonly more: string;
} {
  const others = evidence.filter((one) => one !== chief);
  const outside = others.filter((one) => one.verdict === "outside");
  const named = outside.slice(0, MOST_NAMED);
  const left = others.length - named.length;
  const bad = outside.length - named.length;
  const more = left > 0 ? `${left} more${bad > 0 ? `, ${bad} not as expected` : ""}` : "";
  return { named, more };
}

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
