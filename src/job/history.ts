import { applyPatches, enablePatches, type Patch, produceWithPatches } from "immer";
import type { Job } from "./types.ts";

enablePatches();

/** One intention of the user as data: what changed, how to take it back, and what it is called. */
export interface Edit {
  /** What the undo button says it will take back, e.g. "Move F3". */
  readonly label: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
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

/**
 * Applies `change` to a draft of the job as one undo step. The same object comes back when
 * nothing changed. Any new edit forgets what had been taken back.
 */
export function applyEdit(now: Versioned, label: string, change: (draft: Job) => void): Versioned {
  const [job, patches, inverse] = produceWithPatches(now.job, (draft: Job) => {
    change(draft);
  });
  if (patches.length === 0) return now;
  return { job, history: { done: [...now.history.done, { label, patches, inverse }], undone: [] } };
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
