import { existsSync, statSync } from "node:fs";
import { expect, test } from "vitest";
import { blankJob, sweeperJob } from "../../scripts/samples/sweeper/job.ts";
import { trailerJob } from "../../scripts/samples/trailer/job.ts";
import { jobSchema, readJobFile, writeJobText } from "../../src/job/index.ts";
import { readSample, sampleBytes, samplePath } from "./sample-files.ts";

const JOBS = [
  ["sweeper", "sweeper/job.json", sweeperJob],
  ["sweeper", "sweeper/blank.json", blankJob],
  ["trailer-iso-12098", "trailer-iso-12098/job.json", trailerJob],
] as const;

test.each(JOBS)("%s: %s is what the script makes today", (_folder, file, make) => {
  expect(Buffer.from(sampleBytes(file)).toString("utf8")).toBe(writeJobText(make()));
});

test.each(JOBS)("%s: %s is a job, whole and with its picture beside it", (folder, file) => {
  const job = readSample(file);
  expect(jobSchema.safeParse(job).error).toBeUndefined();
  const pictures = job.diagram.sheets.map((sheet) => sheet.image?.file ?? "");
  expect(pictures).toHaveLength(1);
  for (const picture of pictures) expect(existsSync(samplePath(`${folder}/${picture}`))).toBe(true);
});

test.each([
  ["sweeper.pintruth", "sweeper/job.json"],
  ["trailer-iso-12098.pintruth", "trailer-iso-12098/job.json"],
])("%s holds the same job and its picture", (archive, file) => {
  const read = readJobFile(sampleBytes(archive), archive);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const { job, pictures } = read.value;
  const loose = readSample(file);
  expect(job).toEqual(loose);
  const picture = loose.diagram.sheets[0]?.image?.file ?? "";
  const folder = file.slice(0, file.indexOf("/"));
  const packed = Buffer.from(pictures.get(picture)?.bytes ?? []);
  expect(packed.equals(sampleBytes(`${folder}/${picture}`))).toBe(true);
});

test("the demo's scan is small enough to carry around", () => {
  const { size } = statSync(samplePath("sweeper/images/sweeper-sheet-7.jpg"));
  expect(size).toBeLessThan(2.5 * 1024 * 1024);
});
