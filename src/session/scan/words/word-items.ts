import { type Box, boxAround, type Point } from "../../../base/index.ts";
import { kindOf } from "../../../circuit/index.ts";
import { type Id, type Job, splitRef } from "../../../job/index.ts";
import { isOddName, sayOddName } from "./name-letters.ts";
import type { ReadDoubt, ReadWord } from "./read-word.ts";
import { type AssignedWord, assignWords } from "./word-assignment.ts";
import type { Claim } from "./word-claims.ts";
import { placesOf } from "./word-places.ts";
import {
  isWritten,
  labelWrites,
  sayWrite,
  standing,
  type WordWrite,
  whyNotWrite,
} from "./word-writes.ts";

/** What the user said of one word. */
export interface WordDecision {
  /** As corrected by hand. */
  readonly text?: string;
  /** Key of the target chosen by hand. */
  readonly target?: string;
  readonly skipped?: true;
}

/** One thing that a word can be written to. */
export interface WordTarget {
  readonly key: string;
  /** `F1: fuse value 60 A`. */
  readonly says: string;
  readonly ref: string;
  readonly writes: readonly WordWrite[];
  /** Why it can't be; null when it can. */
  readonly problem: string | null;
}

export interface WordItem {
  readonly id: string;
  /** Ids of the read words that it is made of: the lines of one label are one item. */
  readonly words: readonly string[];
  /** Around all its words, pixels of the picture. */
  readonly box: Box;
  readonly turn: ReadWord["turn"];
  /** As read, or as corrected. */
  readonly text: string;
  readonly isCorrected: boolean;
  /** The likeliest, or the chosen one, first. Empty: nothing of the drawing that it could belong to. */
  readonly targets: readonly WordTarget[];
  /** `written`: the drawing says so already. */
  readonly state: "open" | "written" | "skipped" | "nowhere";
  /** Why it should be looked at, a sentence each; empty when it is sure. */
  readonly doubts: readonly string[];
  /** Whether it stands at a joint of a line where no splice is drawn, and is likely the name of one. */
  readonly waits: boolean;
}

/** A rival so little farther off makes doubtful which is meant. */
const RIVAL = 1.4;
const RIVAL_BY = 0.4;
/** Farther from its part than this, letter heights, a word may be another's. */
const FAR = 3.6;

/**
 * The words of a sheet as the queue shows them: open ones as they are read on the sheet. `joints`: of the lines of
 * its picture that were followed, pixels.
 */
export function wordItems(
  job: Job,
  sheet: Id,
  words: readonly ReadWord[],
  decisions: Readonly<Record<string, WordDecision>>,
  joints: readonly Point[] = [],
): readonly WordItem[] {
  const corrected = words.map((word) => {
    const text = decisions[word.id]?.text;
    return text === undefined ? word : { ...word, text, sure: 100, doubts: [], others: [] };
  });
  const legible = corrected.filter(({ text }) => text !== "");
  const assigned = assignWords(job, placesOf(job, sheet, joints), legible);
  return labelsTogether(assigned).map((group) => itemOf(job, group, decisions));
}

/** Lines of one label are one item. */
function labelsTogether(assigned: readonly AssignedWord[]): (readonly AssignedWord[])[] {
  const groups: AssignedWord[][] = [];
  const byLabel = new Map<string, AssignedWord[]>();
  for (const one of assigned) {
    const slot = one.claims[0]?.slot;
    const known = slot?.startsWith("label ") ? byLabel.get(slot) : undefined;
    if (known) known.push(one);
    else {
      const group = [one];
      groups.push(group);
      if (slot?.startsWith("label ")) byLabel.set(slot, group);
    }
  }
  return groups;
}

function itemOf(
  job: Job,
  group: readonly AssignedWord[],
  decisions: Readonly<Record<string, WordDecision>>,
): WordItem {
  const sorted = [...group].sort(
    (a, b) => a.word.box.top - b.word.box.top || a.word.box.left - b.word.box.left,
  );
  const [{ word, claims }] = sorted as [AssignedWord, ...AssignedWord[]];
  const decision = decisions[word.id] ?? {};
  const text = sorted.map((one) => one.word.text).join(" ");
  const whole =
    sorted.length === 1
      ? claims
      : [{ ...(claims[0] as Claim), writes: labelled(job, claims, text) }];
  // What is known by its kind, such as a relay's 87, is nothing else either.
  const waits = whole[0]?.waits === true;
  const isKnown = whole[0]?.writes.length === 0 && !waits;
  const targets = whole
    .filter(
      (claim) => claim.writes.length > 0 && !isKnown && !(waits && oddName(job, claim) !== null),
    )
    .map((claim) => targetOf(job, claim));
  const chosen = targets.find(({ key }) => key === decision.target);
  const ordered = chosen ? [chosen, ...targets.filter((one) => one !== chosen)] : targets;
  const first = ordered[0];
  const isDone = first?.writes.every((write) => isWritten(job, write)) ?? false;
  return {
    id: word.id,
    words: sorted.map((one) => one.word.id),
    box: boxAround(sorted.map((one) => one.word.box)),
    turn: word.turn,
    text,
    isCorrected: sorted.some((one) => decisions[one.word.id]?.text !== undefined),
    targets: ordered,
    state: !first ? "nowhere" : isDone ? "written" : decision.skipped ? "skipped" : "open",
    doubts: first && !isDone ? doubtsOf(job, sorted, whole, first, decision) : [],
    waits,
  };
}

/** Why a name is hardly its part's, a sentence; null where it may be. */
function oddName(job: Job, { meaning, ref }: Claim): string | null {
  const part = job.diagram.parts.find(({ id }) => id === ref);
  if (!part || meaning.is !== "name" || !isOddName(part.kind, meaning.id)) return null;
  return sayOddName(part.kind, meaning.id);
}

function labelled(job: Job, claims: readonly Claim[], text: string): readonly WordWrite[] {
  return (claims[0] as Claim).writes.flatMap((write): readonly WordWrite[] => {
    if (write.field === "control") return [];
    if (write.field !== "label") return [write];
    const part = job.diagram.parts.find(({ id }) => id === write.ref);
    return part ? labelWrites(part, text) : [{ ...write, value: text }];
  });
}

function targetOf(job: Job, { slot, ref, writes }: Claim): WordTarget {
  const problem = writes.map((write) => whyNotWrite(job, write)).find((one) => one !== null);
  return {
    key: slot,
    ref,
    writes,
    says: `${sayThing(job, ref)}: ${writes.map(sayWrite).join(", ")}`,
    problem: problem ?? null,
  };
}

/** `F1 (fuse)`, `W12`, `A1:3`. */
function sayThing(job: Job, ref: string): string {
  const part = job.diagram.parts.find(({ id }) => id === ref);
  return part ? `${ref} (${kindOf(part.kind).title})` : ref;
}

function doubtsOf(
  job: Job,
  group: readonly AssignedWord[],
  claims: readonly Claim[],
  target: WordTarget,
  decision: WordDecision,
): string[] {
  const doubts: string[] = [];
  if (target.problem !== null) doubts.push(target.problem);
  for (const { word, claims: own } of group) {
    doubts.push(...readingDoubts(word));
    if (own[0]?.meaning.mended)
      doubts.push(`Letters were put right: it was read as “${word.text}”.`);
  }
  const [best, rival] = claims;
  if (best && decision.target === undefined) {
    const odd = oddName(job, best);
    if (odd !== null) doubts.push(odd);
    else if (best.cost > FAR && !best.waits) doubts.push("It stands far from there.");
    const isNear = rival && rival.ref !== best.ref && rival.cost <= best.cost * RIVAL + RIVAL_BY;
    if (best.waits || (isNear && rival.waits)) doubts.push(AT_JOINT);
    else if (isNear) doubts.push(`It may belong to ${sayThing(job, rival.ref)} as well.`);
  }
  const [only, ...more] = target.writes;
  if (only && more.length === 0 && decision.text === undefined) {
    if (only.field === "number" && /^\d+$/.test(only.value)) doubts.push(BARE_NUMBER);
    if (only.field === "mark" && group.some(({ word }) => word.sure < SURE_MARK))
      doubts.push(LONE_MARK);
  }
  const says = target.writes.find((write) => write.field === "control");
  if (says && !isWritten(job, says)) doubts.push(SAYS_CONTROL);
  for (const write of target.writes) {
    const now = replaced(job, write);
    if (now !== null) doubts.push(`It takes the place of ${now}.`);
  }
  return doubts;
}

const AT_JOINT =
  "It stands at a joint of a line where no splice is drawn, and may be the name of one.";
const BARE_NUMBER = "A bare number may mean many things: make sure that it is the wire's.";
const SAYS_CONTROL = "It says what works the switch as well: make sure that it is so.";
const LONE_MARK = "A letter or two by themselves are easily misread.";
/** From here on a mark by itself counts as sure. */
const SURE_MARK = 90;

const READ_DOUBTS: Readonly<Record<ReadDoubt, string>> = {
  unclear: "Hard to read.",
  otherwise: "Read twice, it did not say the same.",
  cut: "A line touches it or runs through it.",
  crowded: "Something lies over it or right beside it: a letter may be missing.",
  faint: "Something faint stands at its end: a letter may be missing.",
  misfit: "Its ink does not fit these letters.",
  senseless: "It is no wire’s print, name or value as it is read.",
  unlike: "The sheet’s other wires are labelled otherwise.",
  torn: "It may be a piece of a longer label.",
};

/** Why a reading may be wrong, the first reasons only: they all ask for the same look. */
function readingDoubts({ doubts, others }: ReadWord): string[] {
  const said = doubts.slice(0, MOST_SAID).map((doubt) => READ_DOUBTS[doubt]);
  const [other] = others;
  return doubts.length === 0 || other === undefined
    ? said
    : [...said, `It may also say “${other}”.`];
}

const MOST_SAID = 2;

/** What a user, not the program, put where a word would be written. */
function replaced(job: Job, write: WordWrite): string | null {
  if (write.field === "name" || write.field === "mark") return null;
  const now = standing(job, write);
  if (now === null || isWritten(job, write)) return null;
  const part = job.diagram.parts.find(({ id }) => id === splitRef(write.ref).owner);
  const usual = part && (kindOf(part.kind).defaults(job.systemVoltage) as Record<string, unknown>);
  return usual?.[write.field] !== undefined && String(usual[write.field]) === now
    ? null
    : `“${now}”`;
}

/** Whether it can be written without a look: clear print, one place, nothing replaced. */
export const isSure = ({ state, doubts }: WordItem): boolean =>
  state === "open" && doubts.length === 0;
