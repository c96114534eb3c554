import type { Job } from "../job/index.ts";
import type { JobStore } from "../store/index.ts";
import type { Session } from "./session.ts";
import { createStore, type Store } from "./store.ts";

/** Where the last keystroke stands on its way into the store of jobs. */
export interface SaveStatus {
  readonly state: "saved" | "saving" | "failed";
  /** ISO 8601 time of the last save that went well; null before the first of this visit. */
  readonly at: string | null;
  /** What went wrong, in one sentence; only when failed. */
  readonly why?: string;
}

/** What saving needs of the world around it. */
export interface SaveClock {
  /** ISO 8601. */
  now(): string;
  /** Resolves after so many milliseconds. */
  wait(ms: number): Promise<void>;
}

export interface Saving {
  readonly status: Pick<Store<SaveStatus>, "get" | "subscribe">;
  /**
   * Tries at once to save whatever is not saved yet. Resolves when all is saved, with true, or when
   * a save failed, with false. Call it when the page is about to be hidden or left.
   */
  flush(): Promise<boolean>;
  /** Watches the session no longer; what is waiting is still saved. */
  stop(): void;
}

/** Pauses between attempts after failures, milliseconds; the last one repeats. */
const PAUSES = [500, 1_000, 2_000, 5_000, 10_000, 30_000];

/**
 * Saves the open job after every change, from the moment it is changed: edits of one turn of the
 * event loop make one save, edits during a save make the next one, and the latest always wins. A
 * job that is opened in place of another is saved too, and the other one's last edits first. A
 * failed save keeps the job in hand and is tried again, at the next edit or after a pause.
 * The job that is open when this begins is taken to be in the store, or not worth it until edited.
 */
export function keepSaved(session: Session, store: JobStore, clock: SaveClock): Saving {
  const status = createStore<SaveStatus>({ state: "saved", at: null });
  /** What is not in the store yet: the latest of each key, oldest key first. */
  const waiting = new Map<string, Job>();
  let running: Promise<boolean> | null = null;
  let failures = 0;
  /** Counts attempts so that a pause which an edit has overtaken does not start another. */
  let attempt = 0;
  let { key: seenKey, job: seenJob } = session.get();

  async function saveAll(): Promise<boolean> {
    // Edits of the same turn are one save.
    await Promise.resolve();
    attempt++;
    const tried = new Set<Job>();
    let failed = false;
    for (;;) {
      const next = [...waiting].find(([, job]) => !tried.has(job));
      if (!next) break;
      const [key, job] = next;
      tried.add(job);
      status.set((now) => ({ state: "saving", at: now.at }));
      try {
        await store.save(key, job);
        if (waiting.get(key) === job) waiting.delete(key);
        const at = clock.now();
        status.set(() => ({ state: waiting.size > 0 ? "saving" : "saved", at }));
      } catch (error) {
        failed = true;
        const reason = error instanceof Error ? error.message : String(error);
        status.set((now) => ({
          state: "failed",
          at: now.at,
          why: `The job could not be saved: ${reason}`,
        }));
      }
    }
    failures = failed ? failures + 1 : 0;
    // Here and not in a continuation: an edit must never meet a run that has already ended.
    running = null;
    return !failed;
  }

  async function retryLater() {
    const pause = PAUSES[Math.min(failures, PAUSES.length) - 1] ?? 0;
    const before = attempt;
    await clock.wait(pause);
    if (attempt === before && waiting.size > 0) void run();
  }

  function run(): Promise<boolean> {
    if (!running) {
      running = saveAll();
      void running.then((done) => {
        if (!done) void retryLater();
      });
    }
    return running;
  }

  const stop = session.subscribe(() => {
    const { key, job } = session.get();
    if (key === seenKey && job === seenJob) return;
    seenKey = key;
    seenJob = job;
    waiting.set(key, job);
    void run();
  });

  return {
    status,
    flush: () => (waiting.size > 0 || running ? run() : Promise.resolve(true)),
    stop,
  };
}
