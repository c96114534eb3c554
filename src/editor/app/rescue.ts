import { type Job, readJobText, writeJobText } from "../../job/index.ts";
import type { VisitStore } from "../../store/index.ts";

/**
 * The last edits of a page that was left before the store had them. Only `localStorage` takes
 * something in the moment in which a page goes away; the next visit puts it into the store.
 */
const RESCUE = "pintruth-rescue";

interface Rescued {
  readonly key: string;
  /** ISO 8601. */
  readonly at: string;
  readonly text: string;
}

/** Call it while the page goes away. */
export function rescue(key: string, job: Job, at: string): void {
  try {
    const rescued: Rescued = { key, at, text: writeJobText(job) };
    localStorage.setItem(RESCUE, JSON.stringify(rescued));
  } catch {
    // Too large for it: what the store has by now is what will be there.
  }
}

/** Takes back what was rescued, unless the store got something newer since. */
export async function restoreRescued(store: VisitStore): Promise<void> {
  const kept = localStorage.getItem(RESCUE);
  if (!kept) return;
  const { key, at, text } = JSON.parse(kept) as Rescued;
  const job = readJobText(text);
  const row = (await store.list()).find((one) => one.key === key);
  if (job.ok && (!row || row.savedAt < at)) await store.save(key, job.value);
  localStorage.removeItem(RESCUE);
}
