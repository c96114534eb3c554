import type { Job } from "../job/index.ts";
import type { JobShelf } from "./job-shelf.ts";
import type { VisitStore } from "./port.ts";
import type { Windows } from "./windows.ts";

/**
 * A store over a shelf that other windows use too: those that save one job tell one another, and a
 * save over a version that this window has not seen is refused.
 */
export function shelfStore(shelf: JobShelf, windows: Windows): VisitStore {
  /** The revision that a job object was read or written as. */
  const seen = new WeakMap<Job, string>();

  let queue: Promise<unknown> = Promise.resolve();
  /** Runs after everything asked for before it, whether that went well or not. */
  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = queue.then(work, work);
    queue = result.catch(() => {});
    return result;
  }

  return {
    list: () => shelf.list(),

    async load(key) {
      const found = await shelf.load(key);
      if (!found) return null;
      seen.set(found.job, found.revision);
      return found.job;
    },

    save: (key: string, job: Job, over?: Job) =>
      inTurn(async () => {
        // Asked only now: the save before this one may have been of that very version.
        const upon = over ? { revision: seen.get(over) } : null;
        seen.set(job, await shelf.save(key, job, upon));
        windows.tell(key);
      }),

    revisionOf: (job) => seen.get(job) ?? null,

    watch: (listener) => windows.hear(listener),

    remove: (key) =>
      inTurn(async () => {
        await shelf.remove(key);
        windows.tell(key);
      }),

    putPicture: (picture) => inTurn(() => shelf.putPicture(picture)),
    getPicture: (file) => shelf.getPicture(file),
    lastOpened: () => shelf.lastOpened(),
    setLastOpened: (key) => inTurn(() => shelf.setLastOpened(key)),
  };
}
