import { expose } from "comlink";
import { freeze } from "immer";
import type { Job } from "../../job/index.ts";
import { type Change, withChanges } from "../../session/index.ts";
import { UnreadableJob, type Upon } from "../../store/index.ts";
import { pouchShelf } from "../../store/pouch-shelf.ts";
import { type NamedBytes, takeJobFile } from "../app/job-files.ts";
import { createTaker } from "./hand-over.ts";
import { cutJob, type JobPiece } from "./job-pieces.ts";

const shelf = pouchShelf("pintruth");
const { taken, ...taker } = createTaker();

/** The job that both sides have, so that only what changed in it need be sent. */
let held: Job | null = null;
/** Pieces of a job on their way to the other side. */
let leaving: readonly JobPiece[] = [];

/** What is sent of a job at first: the pieces are fetched one by one. */
function leave(job: Job) {
  held = freeze(job, true);
  const { outline, pieces } = cutJob(job);
  leaving = pieces;
  return { outline, pieces: pieces.length };
}

/** The browser's database, and the reading of files, in a thread of its own. */
const storeWorker = {
  list: shelf.list,
  remove: shelf.remove,
  putPicture: shelf.putPicture,
  getPicture: shelf.getPicture,
  lastOpened: shelf.lastOpened,
  setLastOpened: shelf.setLastOpened,
  isUp: () => true,
  ...taker,

  /** From now on changes are those of the job that was taken piece by piece. */
  hold(): void {
    held = taken();
  },

  /** Saves the job that is held, with these changes made to it. */
  save(key: string, changes: readonly Change[], upon: Upon | null): Promise<string> {
    if (!held) throw new Error("asked to save before there was a job");
    held = freeze(withChanges(held, changes), true);
    return shelf.save(key, held, upon);
  },

  async load(key: string) {
    try {
      const found = await shelf.load(key);
      return found && { ...leave(found.job), revision: found.revision };
    } catch (error) {
      // Its fields would be lost on the way.
      if (!(error instanceof UnreadableJob)) throw error;
      return { issues: error.issues, text: error.text };
    }
  },

  piece(place: number): JobPiece {
    const piece = leaving[place];
    if (!piece) throw new Error(`no piece ${place}`);
    return piece;
  },

  /** Reads a job file and keeps its pictures. */
  async takeFile(file: NamedBytes, beside: readonly NamedBytes[]) {
    const read = await takeJobFile(file, beside, shelf);
    return "fault" in read ? read : { ...leave(read.job), missing: read.missing };
  },
};

export type StoreWorker = typeof storeWorker;

expose(storeWorker);
