import { kindOf } from "../../../circuit/index.ts";
import { type Job, splitRef } from "../../../job/index.ts";
import { isOddName, sayOddName } from "./name-letters.ts";
import type { ReadDoubt, ReadWord } from "./read-word.ts";
import type { AssignedWord } from "./word-assignment.ts";
import type { Claim } from "./word-claims.ts";
import { isWritten, standing, type WordWrite } from "./word-writes.ts";

/** A rival so little farther off makes doubtful which is meant. */
const RIVAL = 1.4;
const RIVAL_BY = 0.4;
/** Farther from its part than this, letter heights, a word may be another's. */
const FAR = 3.6;

/** What is to be written of the words of one item, and why it may be wrong to. */
interface Doubtful {
  readonly group: readonly AssignedWord[];
  /** What the words may belong to, the likeliest first. */
  readonly claims: readonly Claim[];
  readonly writes: readonly WordWrite[];
  /** Why it can't be written; null when it can. */
  readonly problem: string | null;
  /** Whether the user chose where it is written. */
  readonly isChosen: boolean;
  /** Whether the user put the first word right. */
  readonly isCorrected: boolean;
}

/** Why an item should be looked at, a sentence each; empty when it is sure. */
export function doubtsOf(
  job: Job,
  { group, claims, writes, problem, isChosen, isCorrected }: Doubtful,
): string[] {
  const doubts: string[] = [];
  if (problem !== null) doubts.push(problem);
  for (const { word, claims: own } of group) {
    doubts.push(...readingDoubts(word));
    if (own[0]?.meaning.mended)
      doubts.push(`Letters were put right: it was read as “${word.text}”.`);
  }
  const [best, rival] = claims;
  if (best && !isChosen) {
    const odd = oddName(job, best);
    if (odd !== null) doubts.push(odd);
    else if (best.cost > FAR && !best.waits) doubts.push("It stands far from there.");
    const isNear = rival && rival.ref !== best.ref && rival.cost <= best.cost * RIVAL + RIVAL_BY;
    if (best.waits || (isNear && rival.waits)) doubts.push(AT_JOINT);
    else if (isNear) doubts.push(`It may belong to ${sayThing(job, rival.ref)} as well.`);
  }
  const [only, ...more] = writes;
  if (only && more.length === 0 && !isCorrected) {
    if (only.field === "number" && /^\d+$/.test(only.value)) doubts.push(BARE_NUMBER);
    if (only.field === "mark" && group.some(({ word }) => word.sure < SURE_MARK))
      doubts.push(LONE_MARK);
  }
  const says = writes.find((write) => write.field === "control");
  if (says && !isWritten(job, says)) doubts.push(SAYS_CONTROL);
  for (const write of writes) {
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

/** Why a name is hardly its part's, a sentence; null where it may be. */
export function oddName(job: Job, { meaning, ref }: Claim): string | null {
  const part = job.diagram.parts.find(({ id }) => id === ref);
  if (!part || meaning.is !== "name" || !isOddName(part.kind, meaning.id)) return null;
  return sayOddName(part.kind, meaning.id);
}

/** `F1 (fuse)`, `W12`, `A1:3`. */
export function sayThing(job: Job, ref: string): string {
  const part = job.diagram.parts.find(({ id }) => id === ref);
  return part ? `${ref} (${kindOf(part.kind).title})` : ref;
}
