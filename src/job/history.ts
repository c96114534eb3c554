import { applyPatches, enablePatches, type Patch, produceWithPatches } from "immer";
import type { Job } from "./types.ts";

enablePatches();

/** One intention of the user as data: what changed, how to take it back, and what it is called. */
export interface Edit {
  /** What the undo button says it will take back, e.g. "Move F3". */
  readonly label: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
  /** Names the intention that goes on as long as edits of the same name follow one another. */
  readonly mergeKey?: string;
}

/** The edits that led to the document, newest last, and those taken back, next to redo last. */
export interface History {
  readonly done: readonly Edit[];
  readonly undone: readonly Edit[];
}

export const EMPTY_HISTORY: History = { done: [], undone: [] };

export interface Versioned {
  readonly job: Job;
  readonly history: History;
}

export interface EditOptions {
  /**
   * Joins this edit to the newest one when that bears the same key: both are one intention, such
   * as the letters of one word, and one undo step.
   */
  readonly mergeKey?: string;
}

/**
 * Applies `change` to a draft of the job as one undo step. The same object comes back when
 * nothing changed. Any new edit forgets what had been taken back.
 */
export function applyEdit(
  now: Versioned,
  label: string,
  change: (draft: Job) => void,
  { mergeKey }: EditOptions = {},
): Versioned {
  const [job, patches, inverse] = produceWithPatches(now.job, (draft: Job) => {
    change(draft);
  });
  if (patches.length === 0) return now;
  const newest = now.history.done.at(-1);
  if (mergeKey !== undefined && newest?.mergeKey === mergeKey) {
    return goOn(now, newest, { label, patches, inverse, mergeKey });
  }
  const edit = { label, patches, inverse, ...(mergeKey === undefined ? {} : { mergeKey }) };
  return { job, history: { done: [...now.history.done, edit], undone: [] } };
}

/**
 * The newest edit and what follows it as one. It is made anew from where the newest one began, so
 * that a long word costs no more patches than a short one; what ends as it began is no step.
 */
function goOn(now: Versioned, newest: Edit, next: Edit): Versioned {
  const before = applyPatches(now.job, newest.inverse as Patch[]);
  const [job, patches, inverse] = produceWithPatches(before, (draft: Job) => {
    applyPatches(draft, [...newest.patches, ...next.patches] as Patch[]);
  });
  const earlier = now.history.done.slice(0, -1);
  if (patches.length === 0 || isAlike(job, before))
    return { job: before, history: { done: earlier, undone: [] } };
  return { job, history: { done: [...earlier, { ...next, patches, inverse }], undone: [] } };
}

/** Whether two values say the same. What an edit left the same objects is not looked into. */
function isAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [ours, theirs] = [Object.entries(a), Object.entries(b)];
  const other = new Map(theirs);
  return (
    ours.length === theirs.length &&
    ours.every(([name, value]) => other.has(name) && isAlike(value, other.get(name)))
  );
}

/** Takes the newest edit back; the same object when there is none. */
export function undo(now: Versioned): Versioned {
  const edit = now.history.done.at(-1);
  if (!edit) return now;
  return {
    job: applyPatches(now.job, edit.inverse as Patch[]),
    history: {
      done: now.history.done.slice(0, -1),
      undone: [...now.history.undone, edit],
    },
  };
}

/** Makes the edit last taken back again; the same object when there is none. */
export function redo(now: Versioned): Versioned {
  const edit = now.history.undone.at(-1);
  if (!edit) return now;
  return {
    job: applyPatches(now.job, edit.patches as Patch[]),
    history: {
      done: [...now.history.done, edit],
      undone: now.history.undone.slice(0, -1),
    },
  };
}
