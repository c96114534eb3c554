import { strToU8, zipSync } from "fflate";
import { imageNames, renameImages } from "./images.ts";
import type { Picture } from "./picture.ts";
import type { Job } from "./types.ts";

const WIDTH = 100;

/** JSON in which whatever fits on a line stands on one: a point, a colour, a short part. */
function print(value: unknown, indent: string): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const inner = `${indent}  `;
  const [open, close] = Array.isArray(value) ? ["[", "]"] : ["{", "}"];
  const members = Array.isArray(value)
    ? value.map((member) => print(member, inner))
    : Object.entries(value)
        .filter(([, member]) => member !== undefined)
        .map(([key, member]) => `${JSON.stringify(key)}: ${print(member, inner)}`);
  if (members.length === 0) return open + close;
  const length = members.reduce((sum, member) => sum + member.length + 2, indent.length + 2);
  if (length <= WIDTH && !members.some((member) => member.includes("\n"))) {
    return Array.isArray(value) ? `[${members.join(", ")}]` : `{ ${members.join(", ")} }`;
  }
  return `${open}\n${members.map((member) => inner + member).join(",\n")}\n${indent}${close}`;
}

/** The text of a job's `.json` file: the same job gives the same text, and fields keep their order. */
export const writeJobText = (job: Job): string => `${print(job, "")}\n`;

/** Zip times have no zone and begin in 1980: one moment for all, so that equal jobs give equal files. */
const ZIP_TIME = new Date(1980, 0, 1);

/**
 * The bytes of a `.pintruth` file. Each picture goes below `images/` under a name that tells what
 * it is, and the job inside refers to it there. Pictures that the job does not refer to may be
 * left out of `pictures`, and one that it refers to and that is not given stays missing.
 */
export function writePintruth(job: Job, pictures: ReadonlyMap<string, Picture>): Uint8Array {
  const names = imageNames(pictures);
  const text = strToU8(writeJobText(renameImages(job, names)));
  const files: Parameters<typeof zipSync>[0] = {
    "job.json": [text, { level: 6, mtime: ZIP_TIME }],
  };
  for (const [file, picture] of pictures) {
    // Stored: PNG, JPEG and WebP are packed already.
    files[names.get(file) ?? file] = [picture.bytes, { level: 0, mtime: ZIP_TIME }];
  }
  return zipSync(files);
}
