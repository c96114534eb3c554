import { current, type Draft, isDraft, produce } from "immer";
import { freeId, type Id, type Job, type Part, type Wire } from "../../job/index.ts";
import { idsInUse } from "../changes/drawn-job.ts";

/** The document as it stands within an edit, as plain data to read from quickly. */
export const plain = <T>(value: T): T => (isDraft(value) ? current(value as Draft<T>) : value) as T;

/** The part to write to; null when there is none of that id. Searches plain data: drafts are slow. */
export function draftPart(draft: Job, id: Id): Part | null {
  const index = plain(draft).diagram.parts.findIndex((part) => part.id === id);
  return draft.diagram.parts[index] ?? null;
}

/** Hands each of these parts to `write`; one look through the plain data for all of them. */
export function eachDraftPart(draft: Job, ids: ReadonlySet<Id>, write: (part: Part) => void): void {
  plain(draft).diagram.parts.forEach(({ id }, index) => {
    const part = ids.has(id) ? draft.diagram.parts[index] : undefined;
    if (part) write(part);
  });
}

/** The wire to write to; null when there is none of that id. */
export function draftWire(draft: Job, id: Id): Wire | null {
  const index = plain(draft).diagram.wires.findIndex((wire) => wire.id === id);
  return draft.diagram.wires[index] ?? null;
}

/** Hands out ids that are free in the job, each only once. */
export function idSource(job: Job): (letter: string) => Id {
  const used = idsInUse(job);
  return (letter) => {
    const id = freeId(used, letter);
    used.add(id);
    return id;
  };
}

/**
 * Takes the members that `gone` names out of a list of a draft, in place: what stays can still be
 * written to. Looks at plain data, because drafts are slow.
 */
export function takeOut<T>(list: T[], gone: (one: T) => boolean): void {
  const now = plain(list);
  // Neighbours go together: every cut shifts all that lies behind it.
  for (let end = now.length; end > 0; end--) {
    if (!gone(now[end - 1] as T)) continue;
    let start = end - 1;
    while (start > 0 && gone(now[start - 1] as T)) start--;
    list.splice(start, end - start);
    end = start;
  }
}

/** The document as `change` would leave it, for showing a drag before it is let go. */
export const previewOf = (job: Job, change: (draft: Job) => void): Job =>
  produce(job, (draft: Job) => {
    change(draft);
  });
