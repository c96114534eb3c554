import { strFromU8, strToU8 } from "fflate";
import { fail, type Issue, ok, type Result } from "../base/index.ts";
import { imageUsesOf, safeFile } from "./images.ts";
import { guardText, guardValue } from "./json-guard.ts";
import { LIMITS } from "./limits.ts";
import { migrate, type RawJob } from "./migrate.ts";
import { type Picture, pictureType } from "./picture.ts";
import { polesForPin } from "./pins.ts";
import { splitRef } from "./refs.ts";
import { JOB_FORMAT, JOB_VERSION } from "./schema/job.ts";
import { schemaIssues } from "./schema-issues.ts";
import type { Id, Job, Part } from "./types.ts";
import { referenceIssues } from "./validate.ts";
import { issue, quoted } from "./wording.ts";
import { openZip, type ZipEntry } from "./zip.ts";

export interface JobFile {
  readonly job: Job;
  /**
   * The pictures that came with the job, by the `file` that it refers to them by. Empty for a
   * `.json` file, whose pictures lie beside it.
   */
  readonly pictures: ReadonlyMap<string, Picture>;
}

/** " at line 3, column 7" where the parser tells a position, in any of the ways engines do. */
function whereParsingStopped(text: string, reason: string): string {
  const position = /position (\d+)/.exec(reason)?.[1];
  if (position !== undefined) {
    const before = text.slice(0, Number(position)).split("\n");
    return ` at line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`;
  }
  const place = /line (\d+) column (\d+)/.exec(reason);
  return place ? ` at line ${place[1]}, column ${place[2]}` : "";
}

function parseGuarded(text: string): Result<unknown> {
  const danger = guardText(text);
  if (danger) return fail(danger);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return fail(issue("not-json", "", whereParsingStopped(text, String(error))));
  }
  const found = guardValue(value);
  return found ? fail(found) : ok(value);
}

/** Says what kind of thing it is before asking whether it is a good one. */
function checkedVersion(value: unknown): Result<RawJob> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return fail(issue("not-an-object", ""));
  }
  const raw = value as RawJob;
  const shown = (field: unknown) => (field === undefined ? "missing" : quoted(String(field)));
  if (raw.format !== JOB_FORMAT) return fail(issue("wrong-format", "format", shown(raw.format)));
  const { version } = raw;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return fail(issue("wrong-version", "version", shown(version)));
  }
  if (version > JOB_VERSION) return fail(issue("newer-version", "version", version, JOB_VERSION));
  return ok(raw);
}

/**
 * A relay of several poles need not say how many: the pins that its wires name do. The number is
 * written down on reading, so that all else has one place to look.
 */
function withPoles(job: Job): Job {
  const wanted = new Map<Id, number>();
  const changes = job.machines.flatMap((machine) => machine.changes ?? []);
  const wires = [job.diagram.wires, ...changes.map((change) => change.wires ?? [])].flat();
  const refs = wires.flatMap((wire) => [wire.from, wire.to]);
  for (const ref of [...refs, ...job.links.map((link) => link.pin)]) {
    const { owner, name } = splitRef(ref);
    const poles = polesForPin(name) ?? 1;
    if (poles > (wanted.get(owner) ?? 1)) wanted.set(owner, poles);
  }
  if (wanted.size === 0) return job;
  const counted = <P extends Part>(parts: readonly P[]): P[] =>
    parts.map((part) =>
      part.kind === "relay" && part.poles === undefined && wanted.has(part.id)
        ? { ...part, poles: wanted.get(part.id) }
        : part,
    );
  return {
    ...job,
    diagram: { ...job.diagram, parts: counted(job.diagram.parts) },
    machines: job.machines.map((machine) =>
      machine.changes
        ? {
            ...machine,
            changes: machine.changes.map((change) =>
              change.parts ? { ...change, parts: counted(change.parts) } : change,
            ),
          }
        : machine,
    ),
  };
}

/**
 * A job whose shape is right but whose references nobody has looked at yet: for jobs that this
 * program stored itself. It may have kept a number that a file may no longer hold: that keeps
 * nobody from their work.
 */
export function readStoredJobText(text: string): Result<Job> {
  const read = readShape(text);
  return read.ok ? ok(read.value.job) : read;
}

/** A job whose shape is right, with its numbers that nothing on a machine comes near. */
function readShape(text: string): Result<{ job: Job; outOfBounds: readonly Issue[] }> {
  const parsed = parseGuarded(text);
  if (!parsed.ok) return parsed;
  const versioned = checkedVersion(parsed.value);
  if (!versioned.ok) return versioned;
  const migrated = migrate(versioned.value);
  if (!migrated.ok) return migrated;
  const issues = schemaIssues(migrated.value);
  const outOfBounds = issues.filter(({ code }) => code === "number-out-of-bounds");
  // Past the limit of faults there may be others that were not looked for.
  const isAll = outOfBounds.length === issues.length && issues.length < LIMITS.issues;
  if (!isAll) return { ok: false, issues };
  // The value as parsed, not as rebuilt by the schema: unknown fields and their order stay.
  return ok({ job: withPoles(migrated.value as unknown as Job), outOfBounds });
}

/** A job from the text of its JSON: the shape, the version and every reference checked. */
export function readJobText(text: string): Result<Job> {
  const read = readShape(text);
  if (!read.ok) return read;
  const { job, outOfBounds } = read.value;
  const issues = [...outOfBounds, ...referenceIssues(job)];
  return issues.length > 0 ? { ok: false, issues } : ok(job);
}

function readJobBytes(bytes: Uint8Array): Result<Job> {
  if (bytes.length > LIMITS.jobBytes) return fail(issue("too-large", "", LIMITS.jobBytes));
  const hasMark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  const body = hasMark ? bytes.subarray(3) : bytes;
  // UTF-16 without its mark is valid UTF-8, with a zero in every other byte.
  if (body[0] === 0 || body[1] === 0) return fail(issue("not-utf8", ""));
  const text = strFromU8(body);
  // A byte that is not UTF-8 is decoded to U+FFFD without a word; only the way back shows it.
  if (text.includes("\ufffd")) {
    const again = strToU8(text);
    const same = again.length === body.length && again.every((byte, n) => byte === body[n]);
    if (!same) return fail(issue("not-utf8", ""));
  }
  return readJobText(text);
}

/** The pictures that the job refers to and the archive holds; one that is no picture is a fault. */
function readPictures(
  job: Job,
  entries: ReadonlyMap<string, ZipEntry>,
): Result<ReadonlyMap<string, Picture>> {
  const pictures = new Map<string, Picture>();
  for (const { file, path } of imageUsesOf(job)) {
    const entry = entries.get(safeFile(file) ?? "");
    if (!entry || pictures.has(file)) continue;
    const bytes = entry.read();
    if (!bytes.ok) return bytes;
    const header = pictureType(bytes.value, file, path);
    if (!header.ok) return header;
    pictures.set(file, { bytes: bytes.value, type: header.value.type });
  }
  return ok(pictures);
}

function readArchive(bytes: Uint8Array): Result<JobFile> {
  const entries = openZip(bytes);
  if (!entries.ok) return entries;
  const entry = entries.value.get("job.json");
  if (!entry) return fail(issue("no-job-in-archive", ""));
  if (entry.size > LIMITS.jobBytes) return fail(issue("too-large", "", LIMITS.jobBytes));
  const content = entry.read();
  if (!content.ok) return content;
  const job = readJobBytes(content.value);
  if (!job.ok) return job;
  const pictures = readPictures(job.value, entries.value);
  return pictures.ok ? ok({ job: job.value, pictures: pictures.value }) : pictures;
}

/**
 * A job from the bytes of a `.json` or `.pintruth` file. Which of the two it is shows in its first
 * bytes; `name` only helps to say what is wrong. Pictures that the job refers to and the file does
 * not hold are no fault: see `missingPictures`.
 */
export function readJobFile(bytes: Uint8Array, name: string): Result<JobFile> {
  if (bytes.length === 0) return fail(issue("empty", ""));
  const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
  if (isZip) return readArchive(bytes);
  if (/\.pintruth$/i.test(name)) return fail(issue("not-an-archive", ""));
  const job = readJobBytes(bytes);
  return job.ok ? ok({ job: job.value, pictures: new Map() }) : job;
}

/** Files that the job refers to and that `pictures` does not hold. */
export const missingPictures = (
  job: Job,
  pictures: ReadonlyMap<string, Picture>,
): readonly string[] => [
  ...new Set(
    imageUsesOf(job)
      .map((use) => use.file)
      .filter((file) => !pictures.has(file)),
  ),
];
