import { type Job, readJobText, writeJobText } from "../../job/index.ts";
import { newJobKey } from "../../session/index.ts";
import type { VisitStore } from "../../store/index.ts";

/**
 * The last edits of a page that was left before the store had them. Only `localStorage` takes
 * something in the moment in which a page goes away; the next visit puts it into the store.
 * Each window has an entry of its own.
 */
const RESCUE = "pintruth-rescue";
const ownEntry = `${RESCUE}-${newJobKey()}`;

interface Rescued {
  readonly key: string;
  /** Revision of the stored version that it was made from; null when there was none. */
  readonly upon: string | null;
  readonly text: string;
}

/** Call it while the page goes away. */
export function rescue(key: string, job: Job, upon: string | null): void {
  try {
    const rescued: Rescued = { key, upon, text: writeJobText(job) };
    localStorage.setItem(ownEntry, JSON.stringify(rescued));
  } catch {
    // Too large for it: what the store has by now is what will be there.
  }
}

/** Call it once the store has everything: the page came back, or it was not left after all. */
export function forgetRescued(): void {
  try {
    localStorage.removeItem(ownEntry);
  } catch {
    // A forbidden storage holds nothing to forget.
  }
}

/** Takes back what was rescued; where another window has saved since, as a job of its own. */
export async function restoreRescued(store: VisitStore): Promise<void> {
  const entries = Object.keys(localStorage).filter((name) => name.startsWith(RESCUE));
  for (const entry of entries) {
    const kept = localStorage.getItem(entry);
    if (kept) await restore(store, JSON.parse(kept) as Rescued);
    localStorage.removeItem(entry);
  }
}

async function restore(store: VisitStore, { key, upon, text }: Rescued): Promise<void> {
  const job = readJobText(text);
  if (!job.ok) return;
  const stored = await store.load(key);
  // The store may have the fields in another order than the page had.
  if (stored && [text, writeJobText(job.value)].includes(writeJobText(stored))) return;
  if (stored === null || store.revisionOf(stored) === upon) {
    await store.save(key, job.value, stored ?? undefined);
    return;
  }
  const title = `${job.value.title} (other window)`;
  await store.save(newJobKey(), { ...job.value, title });
}
