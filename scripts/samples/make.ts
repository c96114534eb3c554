import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { type Job, type Picture, writeJobText, writePintruth } from "../../src/job/index.ts";
import { AGED } from "./ageing/age.ts";
import { blankJob, sweeperJob } from "./sweeper/job.ts";
import { PLUG_PHOTO, plugPhoto } from "./sweeper/plug-photo.ts";
import { SWEEPER_IMAGE, sweeperScan } from "./sweeper/scan.ts";
import { trailerJob } from "./trailer/job.ts";
import { TRAILER_IMAGE, trailerSheet } from "./trailer/sheet.ts";

const archive = (job: Job, file: string, picture: Picture): Uint8Array =>
  writePintruth(job, new Map([[file, picture]]));

/** Writes every sample below `folder`; returns one line a file for whoever ran it. */
export function makeSamples(folder: string): string[] {
  const lines: string[] = [];
  const write = (file: string, content: string | Uint8Array) => {
    const path = join(folder, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    lines.push(`${file}  ${Math.ceil(content.length / 1024)} kB`);
  };

  const scan: Picture = { bytes: sweeperScan(AGED), type: "image/jpeg" };
  write(`sweeper/${SWEEPER_IMAGE}`, scan.bytes);
  write("sweeper/job.json", writeJobText(sweeperJob()));
  write("sweeper/blank.json", writeJobText(blankJob()));
  write(`sweeper/${PLUG_PHOTO}`, plugPhoto());
  write("sweeper.pintruth", archive(sweeperJob(), SWEEPER_IMAGE, scan));

  const drawing: Picture = { bytes: trailerSheet(), type: "image/png" };
  write(`trailer-iso-12098/${TRAILER_IMAGE}`, drawing.bytes);
  write("trailer-iso-12098/job.json", writeJobText(trailerJob()));
  write("trailer-iso-12098.pintruth", archive(trailerJob(), TRAILER_IMAGE, drawing));
  return lines;
}
