import { type Remote, wrap } from "comlink";
import type { Job } from "../../job/index.ts";
import { changesFrom, isOffspring } from "../../session/index.ts";
import { type JobShelf, shelfStore, UnreadableJob, type VisitStore } from "../../store/index.ts";
import { windowsOf } from "../../store/windows.ts";
import { type FileReading, takeJobFile } from "../app/job-files.ts";
import { handOver } from "./hand-over.ts";
import { createJoiner } from "./job-pieces.ts";
import { neverUp } from "./never-up.ts";
import type { StoreWorker } from "./store-worker.ts";

const DATABASE = "pintruth";

/** A thread that has not said a word by then never will. */
const PATIENCE_MS = 20_000;

/** Where jobs are kept, and what reads files of jobs. */
export interface OpenedStore {
  readonly store: VisitStore;
  readonly readFile: FileReading;
}

/** The browser's store behind a worker; on this very thread where none can be started. */
export function openStore(): OpenedStore {
  let far: Far | null = openFar();
  let here: Promise<JobShelf> | null = null;
  const shelfHere = () => {
    here ??= import("../../store/pouch-shelf.ts").then(({ pouchShelf }) => pouchShelf(DATABASE));
    return here;
  };
  /** Asks the far side, or this one once the far side is known to be gone. */
  const ask = async <T>(
    there: (far: Far) => Promise<T>,
    otherwise: (shelf: JobShelf) => Promise<T>,
  ): Promise<T> => {
    if (far && !(await far.isUp)) far = null;
    return far ? there(far) : otherwise(await shelfHere());
  };
  const simply = <T>(act: (shelf: Pick<JobShelf, Simple>) => Promise<T>) =>
    ask(
      (one) => Promise.race([act(one.remote as unknown as Pick<JobShelf, Simple>), one.broken]),
      act,
    );

  const shelf: JobShelf = {
    list: () => simply((one) => one.list()),
    remove: (key) => simply((one) => one.remove(key)),
    putPicture: (picture) => simply((one) => one.putPicture(picture)),
    getPicture: (file) => simply((one) => one.getPicture(file)),
    lastOpened: () => simply((one) => one.lastOpened()),
    setLastOpened: (key) => simply((one) => one.setLastOpened(key)),
    save: (key, job, upon) =>
      ask(
        (one) => one.inTurn(() => one.save(key, job, upon)),
        (one) => one.save(key, job, upon),
      ),
    load: (key) =>
      ask(
        (one) => one.inTurn(() => one.load(key)),
        (one) => one.load(key),
      ),
  };
  const store = shelfStore(shelf, windowsOf(DATABASE));
  return {
    store,
    readFile: (file, beside) =>
      ask(
        (one) => one.inTurn(() => one.readFile(file, beside)),
        () => takeJobFile(file, beside, store),
      ),
  };
}

/** What is asked and answered without a job, so that nothing need be cut in pieces. */
type Simple = Exclude<keyof JobShelf, "load" | "save">;

interface Far {
  readonly remote: Remote<StoreWorker>;
  /** Never resolves. */
  readonly broken: Promise<never>;
  readonly isUp: Promise<boolean>;
  readonly readFile: FileReading;
  save: JobShelf["save"];
  load: JobShelf["load"];
  /** Runs after everything asked for before it: both sides speak of one job at a time. */
  inTurn<T>(work: () => Promise<T>): Promise<T>;
}

function openFar(): Far | null {
  let worker: Worker;
  try {
    worker = new Worker(new URL("./store-worker.ts", import.meta.url), { type: "module" });
  } catch {
    return null;
  }
  let isBroken = false;
  const broken = neverUp(worker);
  broken.catch(() => {
    isBroken = true;
  });
  const remote = wrap<StoreWorker>(worker);
  const late = new Promise<boolean>((resolve) => {
    setTimeout(() => resolve(false), PATIENCE_MS);
  });
  const came: Promise<boolean> = Promise.race([remote.isUp(), late, broken]).then(
    (up) => up,
    () => false,
  );
  /** The job that both sides have. */
  let held: Job | null = null;
  let queue: Promise<unknown> = Promise.resolve();

  const fetched = async ({ outline, pieces }: { outline: Job; pieces: number }): Promise<Job> => {
    const joiner = createJoiner(outline);
    for (let place = 0; place < pieces; place++) joiner.add(await remote.piece(place));
    held = joiner.job();
    return held;
  };
  const orBroken = <T>(work: Promise<T>) => Promise.race([work, broken]);

  return {
    remote,
    broken,
    get isUp() {
      return came.then((up) => up && !isBroken);
    },
    inTurn(work) {
      const result = queue.then(work, work);
      queue = result.catch(() => {});
      return orBroken(result);
    },
    async save(key, job, upon) {
      const before = held;
      // Until the far side has it, neither knows what the other has.
      held = null;
      let changes: ReturnType<typeof changesFrom> = [];
      if (before && isOffspring(before, job)) changes = changesFrom(before, job);
      else {
        await handOver(job, remote);
        await remote.hold();
      }
      const revision = await remote.save(key, changes, upon);
      held = job;
      return revision;
    },
    async load(key) {
      held = null;
      const found = await remote.load(key);
      if (found === null) return null;
      if (found.text !== undefined) throw new UnreadableJob(key, found.issues, found.text);
      return { job: await fetched(found), revision: found.revision };
    },
    async readFile(file, beside) {
      held = null;
      const plain = ({ name, bytes }: { name: string; bytes: Uint8Array }) => ({ name, bytes });
      const read = await remote.takeFile(plain(file), beside.map(plain));
      if ("fault" in read) return read;
      return { job: await fetched(read), missing: read.missing };
    },
  };
}
