import {
  extensionOf,
  imageFilesOf,
  type Job,
  mendReferences,
  type Picture,
  readStoredJobText,
} from "../job/index.ts";
import { sha256 } from "./sha256.ts";
import { UnreadableJob } from "./unreadable-job.ts";

/** A job as a store keeps it. Compact: it is written after every edit. */
export const storedText = (job: Job): string => JSON.stringify(job);

/**
 * The job that a stored text is. Loose threads (a link to a cavity that is gone) are dropped
 * rather than keeping the user from their work; anything worse throws `UnreadableJob`.
 */
export function storedJob(key: string, text: string): Job {
  const read = readStoredJobText(text);
  if (!read.ok) throw new UnreadableJob(key, read.issues, text);
  const { job, left } = mendReferences(read.value);
  if (left.length > 0) throw new UnreadableJob(key, left, text);
  return job;
}

/** The hash in a file name that a store gave out; null for any other name. */
export const hashIn = (file: string): string | null =>
  /^images\/([0-9a-f]{64})\.[a-z]+$/.exec(file)?.[1] ?? null;

/** The file name for a picture: its hash, and an extension that tells what it is. */
export const fileFor = (picture: Picture): string =>
  `images/${sha256(picture.bytes)}.${extensionOf(picture.type)}`;

/** Hashes of the pictures that a stored text refers to, whether it is still a job or not. */
export function hashesIn(text: string): ReadonlySet<string> {
  const read = readStoredJobText(text);
  const files = read.ok
    ? imageFilesOf(read.value)
    : [...text.matchAll(/images\/[0-9a-f]{64}\.[a-z]+/g)].map(([file]) => file);
  return new Set(files.map(hashIn).filter((hash) => hash !== null));
}
