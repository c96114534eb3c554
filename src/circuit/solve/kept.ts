import type { Job } from "../../job/index.ts";

/** How many states of one job are kept at a time: a whole machine's takes some megabytes. */
const MOST = 12;

/**
 * What was worked out for a job, by key; the longest unused goes first, and all with the job. A job
 * is never changed in place: an edit makes another.
 */
export class Kept<Value> {
  readonly #byJob = new WeakMap<Job, Map<string, Value>>();

  of(job: Job, key: string, make: () => Value): Value {
    const kept = this.#byJob.get(job) ?? new Map<string, Value>();
    this.#byJob.set(job, kept);
    const known = kept.get(key);
    const value = known ?? make();
    kept.delete(key);
    kept.set(key, value);
    for (const oldest of kept.keys()) {
      if (kept.size <= MOST) break;
      kept.delete(oldest);
    }
    return value;
  }
}
