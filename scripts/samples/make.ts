import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { strToU8, type Zippable, zipSync } from "fflate";
import type { Job } from "../../src/job/index.ts";
import { AGED } from "./ageing/age.ts";
import { blankJob, sweeperJob } from "./sweeper/job.ts";
import { SWEEPER_IMAGE, sweeperScan } from "./sweeper/scan.ts";
import { trailerJob } from "./trailer/job.ts";
import { TRAILER_IMAGE, trailerSheet } from "./trailer/sheet.ts";

/** The same bytes on every run: a zip of ours carries no date of the day. */
const ZIP_DATE = new Date(1980, 0, 1, 12);

const toText = (job: Job): string => `${JSON.stringify(job, null, 2)}\n`;

function archive(job: Job, pictures: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const entries: Zippable = { "job.json": [strToU8(toText(job)), { mtime: ZIP_DATE }] };
  for (const [file, bytes] of Object.entries(pictures)) {
    // a JPEG or PNG does not shrink any further
    entries[file] = [bytes, { mtime: ZIP_DATE, level: 0 }];
  }
  return zipSync(entries);
}

/** Writes every sample below `folder`; returns one line a file for whoever ran it. */
export async function makeSamples(folder: string): Promise<string[]> {
  const lines: string[] = [];
  const write = (file: string, content: string | Uint8Array) => {
    const path = join(folder, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    lines.push(`${file}  ${Math.ceil(content.length / 1024)} kB`);
  };

  const scan = sweeperScan(AGED);
  write(`sweeper/${SWEEPER_IMAGE}`, scan);
  write("sweeper/job.json", toText(sweeperJob()));
  write("sweeper/blank.json", toText(blankJob()));
  write("sweeper.pintruth", archive(sweeperJob(), { [SWEEPER_IMAGE]: scan }));

  const trailer = trailerSheet();
  write(`trailer-iso-12098/${TRAILER_IMAGE}`, trailer);
  write("trailer-iso-12098/job.json", toText(trailerJob()));
  write("trailer-iso-12098.pintruth", archive(trailerJob(), { [TRAILER_IMAGE]: trailer }));
  return lines;
}
