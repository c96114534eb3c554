import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Job, readJobFile } from "../../src/job/index.ts";

export const samplePath = (file: string): string =>
  fileURLToPath(new URL(`../../sample-data/${file}`, import.meta.url));

export const sampleBytes = (file: string): Uint8Array =>
  new Uint8Array(readFileSync(samplePath(file)));

/** A sample as the program reads it; throws with the issues where it does not. */
export function readSample(file: string): Job {
  const read = readJobFile(sampleBytes(file), file);
  if (!read.ok) throw new Error(`${file}: ${JSON.stringify(read.issues)}`);
  return read.value.job;
}
