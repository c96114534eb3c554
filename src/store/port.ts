import type { Job, Picture } from "../job/index.ts";

export type { Picture };

/** A row of the list of jobs to come back to. */
export interface JobSummary {
  readonly key: string;
  readonly title: string;
  /** ISO 8601 time of the last save. */
  readonly savedAt: string;
}

/** Where jobs live between visits. Pictures are kept once each, by the hash of their bytes. */
export interface JobStore {
  /** Newest first. */
  list(): Promise<readonly JobSummary[]>;
  /** Null when there is no such job. Rejects with `UnreadableJob` when it is there but no job. */
  load(key: string): Promise<Job | null>;
  /**
   * Saves of one store follow one another in the order in which they were asked for. With `over`,
   * the version that this one was made from, it rejects with `ChangedElsewhere` and writes nothing
   * when another version is there by now; a version the store has never seen stands for none.
   */
  save(key: string, job: Job, over?: Job): Promise<void>;
  /** Which stored version this very object is; null when this store neither read nor wrote it. */
  revisionOf(job: Job): string | null;
  /**
   * Calls back with the key of each job that is saved or removed through another store of the same
   * jobs, such as that of another window. Returns the call that stops it.
   */
  watch(listener: (key: string) => void): () => void;
  /** Removes the job, and those of its pictures that no other job refers to. */
  remove(key: string): Promise<void>;
  /** Keeps a picture and returns the `file` that a job refers to it by: `images/<sha-256>.<ext>`. */
  putPicture(picture: Picture): Promise<string>;
  getPicture(file: string): Promise<Picture | null>;
}

/** A store that also remembers which job was open. */
export interface VisitStore extends JobStore {
  /** Key of the job that was open last; null before the first, or when it is gone. */
  lastOpened(): Promise<string | null>;
  setLastOpened(key: string): Promise<void>;
}
