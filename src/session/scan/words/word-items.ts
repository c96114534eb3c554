import { type Box, boxAround, type Point } from "../../../base/index.ts";
import type { Id, Job } from "../../../job/index.ts";
import type { ReadWord } from "./read-word.ts";
import { type AssignedWord, assignWords } from "./word-assignment.ts";
import type { Claim } from "./word-claims.ts";
import { doubtsOf, oddName, sayThing } from "./word-doubts.ts";
import { placesOf } from "./word-places.ts";
import { isWritten, labelWrites, sayWrite, type WordWrite, whyNotWrite } from "./word-writes.ts";

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
  const doubtful = ({ writes, problem }: WordTarget) => ({
    group: sorted,
    claims: whole,
    ...{ writes, problem },
    isChosen: decision.target !== undefined,
    isCorrected: decision.text !== undefined,
  });
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
    doubts: first && !isDone ? doubtsOf(job, doubtful(first)) : [],
    waits,
  };
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

/** Whether it can be written without a look: clear print, one place, nothing replaced. */
export const isSure = ({ state, doubts }: WordItem): boolean =>
  state === "open" && doubts.length === 0;
