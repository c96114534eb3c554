import type { Job } from "../job/index.ts";
import type { VisitStore } from "../store/index.ts";
import { newJobKey } from "./job-key.ts";
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
  /** Revision of the stored version that the open job was made from; null when there is none. */
  builtUpon(): string | null;
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
 *
 * The same job may be open in another window. What that one saves is taken over while this one has
 * nothing of its own to save; where both have, neither is lost: this one goes on as another job.
 */
export function keepSaved(session: Session, store: VisitStore, clock: SaveClock): Saving {
  const status = createStore<SaveStatus>({ state: "saved", at: null });
  /** What is not in the store yet: the latest of each key, oldest key first. */
  const waiting = new Map<string, Job>();
  let running: Promise<boolean> | null = null;
  let failures = 0;
  /** Counts attempts so that a pause which an edit has overtaken does not start another. */
  let attempt = 0;
  let { key: seenKey, job: seenJob } = session.get();
  /** Of each key, the version in the store as far as this window knows: the next is made from it. */
  const known = new Map<string, Job>([[seenKey, seenJob]]);
  const tell = (text: string) => session.show({ notice: { tone: "info", text } });

  async function saveOne(key: string, job: Job): Promise<void> {
    try {
      await store.save(key, job, known.get(key));
      known.set(key, job);
    } catch (error) {
      if (!isChangedElsewhere(error)) throw error;
      await keepBoth(key, job);
    }
  }

  /** This window's version and that of another one are both wanted: this one becomes a new job. */
  async function keepBoth(key: string, job: Job): Promise<void> {
    const theirs = await store.load(key).catch(() => undefined);
    if (theirs === null) {
      await store.save(key, job);
      known.set(key, job);
      tell(
        `“${job.title}” was deleted in another window. It is kept, because you changed it here.`,
      );
      return;
    }
    if (theirs && JSON.stringify(theirs) === JSON.stringify(job)) {
      known.set(key, theirs);
      return;
    }
    const ownKey = newJobKey();
    const own = { ...job, title: otherTitle(job.title) };
    await store.save(ownKey, own);
    if (waiting.get(key) === job) waiting.delete(key);
    const now = session.get();
    if (now.key === key) {
      const next = now.job === job ? own : { ...now.job, title: otherTitle(now.job.title) };
      known.set(ownKey, own);
      waiting.delete(key);
      if (next !== own) waiting.set(ownKey, next);
      seenKey = ownKey;
      seenJob = next;
      session.moveTo(ownKey, next);
      await store.setLastOpened(ownKey).catch(() => {});
    }
    tell(
      `Another window changed “${job.title}” too: your version is now the job “${own.title}”, and theirs stays in the list of jobs.`,
    );
  }

  /** Takes over what another window saved, unless there is something here that is not saved yet. */
  async function catchUp(): Promise<void> {
    const { key, job } = session.get();
    const idle = () => !running && !waiting.has(key) && session.get().job === job;
    const from = known.get(key);
    if (!idle() || from !== job) return;
    const theirs = await store.load(key).catch(() => undefined);
    // A save that has begun meanwhile will find out by itself.
    if (theirs === undefined || !idle() || session.get().key !== key) return;
    if (theirs === null) {
      tell(`“${job.title}” was deleted in another window. It comes back with your next change.`);
      return;
    }
    if (store.revisionOf(theirs) === store.revisionOf(from)) return;
    known.set(key, theirs);
    seenJob = theirs;
    session.reopen(theirs);
    tell("Another window changed this job: here it is as it stands now. Undo begins anew.");
  }

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
        await saveOne(key, job);
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
        else if (heard) hear();
      });
    }
    return running;
  }

  let heard = false;
  function hear() {
    heard = running !== null;
    if (!heard) void catchUp();
  }
  const stopHearing = store.watch((key) => {
    if (key === session.get().key) hear();
  });

  const stopSeeing = session.subscribe(() => {
    const { key, job } = session.get();
    if (key === seenKey && job === seenJob) return;
    if (key !== seenKey) known.set(key, job);
    const fromStore = key !== seenKey && store.revisionOf(job) !== null;
    seenKey = key;
    seenJob = job;
    if (fromStore) return;
    waiting.set(key, job);
    void run();
  });

  return {
    status,
    flush: () => (waiting.size > 0 || running ? run() : Promise.resolve(true)),
    builtUpon: () => {
      const from = known.get(session.get().key);
      return from ? store.revisionOf(from) : null;
    },
    stop: () => {
      stopSeeing();
      stopHearing();
    },
  };
}

/** Known by its name, because here the store is only known by its port. */
const isChangedElsewhere = (error: unknown) =>
  error instanceof Error && error.name === "ChangedElsewhere";

const OTHER = " (other window)";
const otherTitle = (title: string) => (title.endsWith(OTHER) ? title : title + OTHER);
