import type { Job } from "../job/index.ts";

/** A row of the list of jobs to come back to. */
export interface JobSummary {
  readonly key: string;
  readonly title: string;
  /** ISO 8601 time of the last save. */
  readonly savedAt: string;
}

export interface Picture {
  readonly bytes: Uint8Array;
  /** MIME type, found from the bytes and not from a name: image/png, image/jpeg or image/webp. */
  readonly type: string;
}

/** Where jobs live between visits. Pictures are kept once each, by the hash of their bytes. */
export interface JobStore {
  /** Newest first. */
  list(): Promise<readonly JobSummary[]>;
  /** Null when there is no such job. */
  load(key: string): Promise<Job | null>;
  save(key: string, job: Job): Promise<void>;
  remove(key: string): Promise<void>;
  /** Keeps a picture and returns the `file` that a job refers to it by: `images/<sha-256>.<ext>`. */
  putPicture(picture: Picture): Promise<string>;
  getPicture(file: string): Promise<Picture | null>;
}
