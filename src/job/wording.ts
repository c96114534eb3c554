import type { Issue } from "../base/index.ts";
import { LIMITS } from "./limits.ts";
import { JOB_FORMAT, JOB_VERSION } from "./schema/job.ts";

const megabytes = (bytes: number) => `${Math.round(bytes / 1024 / 1024)} MB`;

/** A piece of the user's text short enough for a sentence, on one line. */
export const quoted = (text: string) => {
  const shown = text.length > 60 ? `${text.slice(0, 57)}...` : text;
  return JSON.stringify(shown);
};

/** The first dozen names; reads no further, since a hostile file may hold a million. */
function several(names: Iterable<string>): string {
  const shown: string[] = [];
  for (const name of names) {
    if (shown.length === 12) return `${shown.join(", ")} ...`;
    shown.push(name);
  }
  return shown.join(", ");
}

/**
 * Every sentence that says what is wrong with a job file, by its code. `owner` names the thing as
 * a person would ("wire W3"), `field` is the key in it.
 */
const WORDING = {
  empty: () => "the file is empty: choose another, or a backup of it",
  "too-large": (limit: number) =>
    `the job is larger than ${megabytes(limit)}: no traced diagram is; choose another file`,
  "not-utf8": () => "the file is not text in UTF-8: save it again in that encoding",
  "cut-short": () =>
    "the file ends in the middle: it was cut short when saved or copied; use another copy",
  "not-json": (where: string) =>
    `the file is not JSON${where}: use another copy or correct it there`,
  "too-deep": (limit: number) =>
    `brackets stand more than ${limit} deep in one another: no job needs that; choose another file`,
  "too-many-values": (limit: number) =>
    `the file has more than ${limit} values: no traced diagram has; choose another file`,
  "key-not-allowed": (key: string) =>
    `a field may not be called ${quoted(key)}: take it out or rename it`,
  "number-too-large": () => "the number is larger than a computer can hold: correct it",
  "not-an-object": () => "the file holds no job: it must be a JSON object; choose another file",
  "wrong-format": (found: string) =>
    `the file is not a Pintruth job: "format" should be "${JOB_FORMAT}" but is ${found}; choose another file`,
  "wrong-version": (found: string) =>
    `"version" must be a whole number from 1 to ${JOB_VERSION} but is ${found}: correct it`,
  "newer-version": (found: number, known: number) =>
    `the job was saved in format version ${found} and this Pintruth reads up to version ${known}: open it with a newer Pintruth`,
  "migration-failed": (from: number) =>
    `the job's version ${from} cannot be brought up to date: it lacks what that version always had; use another copy`,

  missing: (owner: string, field: string) => `${owner} has no "${field}": add it`,
  "wrong-type": (owner: string, field: string, found: string, expected: string) =>
    `"${field}" of ${owner} is ${found} but must be ${expected}: correct it`,
  "not-one-of": (owner: string, field: string, found: string, choices: readonly string[]) =>
    `"${field}" of ${owner} is ${found} but must be one of ${several(choices)}: choose one`,
  "not-allowed": (owner: string, field: string, found: string, why: string) =>
    `"${field}" of ${owner} is ${found}: ${why}`,
  "number-out-of-bounds": (owner: string, field: string, found: string, why: string) =>
    `"${field}" of ${owner} is ${found}, which ${why}`,

  "duplicate-id": (id: string, first: string, second: string) =>
    `the id ${quoted(id)} belongs to ${first} and to ${second}: give one of them another id`,
  "duplicate-pin": (owner: string, pin: string) =>
    `${owner} has two pins ${quoted(pin)}: give one of them another id`,
  "unknown-sheet": (owner: string, sheet: string) =>
    `${owner} lies on the sheet ${quoted(sheet)}, which the job does not have: add the sheet or name another`,
  "unknown-part": (owner: string, field: string, part: string) =>
    `"${field}" of ${owner} names the part ${quoted(part)}, which the job does not have: add the part or name another`,
  "unknown-pin": (
    owner: string,
    field: string,
    part: string,
    pin: string,
    pins: Iterable<string>,
  ) =>
    `"${field}" of ${owner} names the pin ${quoted(pin)}, but part ${quoted(part)} has ${
      several(pins) === "" ? "no pins" : `only the pins ${several(pins)}`
    }: name one of its pins`,
  "unknown-plug": (owner: string, plug: string) =>
    `"cavity" of ${owner} names the plug ${quoted(plug)}, which the job does not have: add the plug or name another`,
  "unknown-cavity": (owner: string, plug: string, mark: string) =>
    `"cavity" of ${owner} names the cavity ${quoted(mark)}, which plug ${quoted(plug)} does not have: name one of its marks`,
  "unknown-position": (owner: string, field: string, found: string, positions: Iterable<string>) =>
    `"${field}" of ${owner} names the position ${quoted(found)}, which is not among its positions ${several(positions)}: name one of them`,
  "picture-path": (owner: string, file: string) =>
    `the picture ${quoted(file)} of ${owner} may lie outside the job's own folder: write a plain relative path such as "images/scan.png"`,

  "not-an-archive": () =>
    "the file is not a .pintruth archive, or it was cut short: use another copy",
  "damaged-archive": (what: string) => `the archive is damaged: ${what}; use another copy`,
  "archive-path": (name: string) =>
    `the archive holds a file ${quoted(name)} that would land outside its own folder: do not trust it; use another copy`,
  "archive-bomb": (name: string) =>
    `${quoted(name)} in the archive would unpack to far more than a job needs: do not trust it; use another copy`,
  "too-many-files": (limit: number) =>
    `the archive holds more than ${limit} files: no job does; use another copy`,
  "no-job-in-archive": () =>
    "the archive holds no job.json: choose a .pintruth file that Pintruth saved",
  "not-a-picture": (file: string) =>
    `${quoted(file)} is not a PNG, JPEG or WebP picture, whatever its name says: replace it`,
  "picture-too-large": (file: string, width: number, height: number) =>
    `the picture ${quoted(file)} has ${width} by ${height} pixels, more than ${LIMITS.pixels / 1e6} megapixels: save it smaller`,
} as const;

type Wording = typeof WORDING;
export type IssueCode = keyof Wording;

/** The issue of this code at `path`, in words. */
export function issue<C extends IssueCode>(
  code: C,
  path: string,
  ...details: Parameters<Wording[C]>
): Issue {
  const sentence = WORDING[code] as (...details: Parameters<Wording[C]>) => string;
  return { code, path, message: sentence(...details) };
}
