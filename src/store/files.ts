import { createReadStream } from "node:fs";
import { mkdir, readFile, realpath, stat, writeFile } from "node:fs/promises";
import { dirname, join, sep } from "node:path";
import { fail, type Issue, ok, type Result } from "../base/index.ts";
import {
  imageNames,
  type Job,
  type JobFile,
  missingPictures,
  type Picture,
  pictureType,
  readJobFile,
  renameImages,
  safeFile,
  writeJobText,
  writePintruth,
} from "../job/index.ts";

/** Bytes: more than the largest archive that reading accepts. */
const LARGEST_FILE = 600 * 1024 * 1024;

const FILE_ERRORS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file: check its name",
  EACCES: "the file may not be opened: check its permissions",
  EPERM: "the file may not be opened: check its permissions",
  EISDIR: "it is a folder: name a file in it",
  ENOTDIR: "a part of its path is no folder: check its name",
  ENOSPC: "the disk is full: make room",
  EROFS: "the disk cannot be written to: choose another place",
  ELOOP: "its link leads back to itself: name the file that was meant",
  ENAMETOOLONG: "its name is too long: check it",
};

/** A plain array over the same memory, since a Buffer answers some calls otherwise. */
const plainBytes = ({ buffer, byteOffset, byteLength }: Buffer): Uint8Array =>
  new Uint8Array(buffer as ArrayBuffer, byteOffset, byteLength);

/** The whole file. */
const bytesOf = async (path: string): Promise<Uint8Array> => plainBytes(await readFile(path));

/**
 * The whole of a file, or of a pipe or device, which does not say how long it is; null where that is more
 * than `most` bytes.
 */
async function bytesUpTo(path: string, most: number): Promise<Uint8Array | null> {
  const about = await stat(path);
  if (about.isFile()) return about.size > most ? null : bytesOf(path);
  const pieces: Buffer[] = [];
  let size = 0;
  for await (const piece of createReadStream(path)) {
    size += (piece as Buffer).length;
    if (size > most) return null;
    pieces.push(piece as Buffer);
  }
  return plainBytes(Buffer.concat(pieces));
}

/** What the system said of a file, in words. */
export function fileIssue(error: unknown): Issue {
  const code = (error as NodeJS.ErrnoException).code ?? "";
  const message = FILE_ERRORS[code] ?? `the file cannot be used (${code || String(error)})`;
  return { code: "file", path: "", message };
}

/**
 * The picture that lies beside a job; null when there is none, or when a link would lead out of
 * the job's own folder.
 */
async function pictureBeside(folder: string, file: string): Promise<Result<Picture | null>> {
  const safe = safeFile(file);
  if (safe === null) return ok(null);
  let bytes: Uint8Array;
  try {
    const home = await realpath(folder);
    const target = await realpath(join(home, safe));
    if (!target.startsWith(home.endsWith(sep) ? home : home + sep)) {
      return fail({
        code: "picture-path",
        path: "",
        message: `the picture ${JSON.stringify(file)} is a link out of the job's own folder: put the picture itself there`,
      });
    }
    bytes = await bytesOf(target);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "ENOENT" ? ok(null) : fail(fileIssue(error));
  }
  const header = pictureType(bytes, file);
  return header.ok ? ok({ bytes, type: header.value.type }) : header;
}

/**
 * Reads a job from a `.json` or `.pintruth` file. The pictures of an archive come with it; those
 * beside a `.json` file are read only when asked for, since checking needs none of them.
 */
export async function readJobPath(
  path: string,
  want: { pictures: boolean },
): Promise<Result<JobFile>> {
  const bytes = await readBytesPath(path);
  if (!bytes.ok) return bytes;
  const read = readJobFile(bytes.value, path);
  if (!read.ok || !want.pictures) return read;
  const { job } = read.value;
  const pictures = new Map(read.value.pictures);
  if (pictures.size > 0 || isArchive(path)) return read;
  for (const file of missingPictures(job, pictures)) {
    const picture = await pictureBeside(dirname(path), file);
    if (!picture.ok) return picture;
    if (picture.value) pictures.set(file, picture.value);
  }
  return ok({ job, pictures });
}

/** A whole file, such as a picture, unless it is larger than any job. */
export async function readBytesPath(path: string): Promise<Result<Uint8Array>> {
  try {
    const bytes = await bytesUpTo(path, LARGEST_FILE);
    if (bytes) return ok(bytes);
    const message = `the file is larger than ${LARGEST_FILE / 1024 ** 2} MB: choose another`;
    return fail({ code: "too-large", path: "", message });
  } catch (error) {
    return fail(fileIssue(error));
  }
}

/** A small text file beside a job; `most`: bytes past which it is refused unread. */
export async function readTextPath(path: string, most: number): Promise<Result<string>> {
  try {
    const bytes = await bytesUpTo(path, most);
    // Some editors mark a text file at its beginning as UTF-8, which is passed over.
    if (bytes) return ok(new TextDecoder().decode(bytes));
    const message = `the file is larger than ${most / 1024} kB: choose another`;
    return fail({ code: "too-large", path: "", message });
  } catch (error) {
    return fail(fileIssue(error));
  }
}

export const isArchive = (path: string): boolean => /\.pintruth$/i.test(path);

/** Writes bytes or text; an issue says why it could not. */
export async function writeOutput(
  path: string,
  content: Uint8Array | string,
): Promise<Result<null>> {
  try {
    await writeFile(path, content);
    return ok(null);
  } catch (error) {
    return fail(fileIssue(error));
  }
}

/** Writes a picture without ever replacing another file's content by it. */
async function writePicture(path: string, bytes: Uint8Array): Promise<Result<null>> {
  try {
    const there = await bytesOf(path);
    if (there.length === bytes.length && there.every((byte, n) => byte === bytes[n]))
      return ok(null);
    const message = `${JSON.stringify(path)} is there already with other content: move it or choose another folder`;
    return fail({ code: "file", path: "", message });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ENOENT") return fail(fileIssue(error));
  }
  return writeOutput(path, bytes);
}

/**
 * Writes a job to a `.pintruth` file, or to a `.json` file with its pictures in `images/` beside
 * it. Pictures are named for what they are, whatever the job called them.
 */
export async function writeJobPath(
  path: string,
  job: Job,
  pictures: ReadonlyMap<string, Picture>,
): Promise<Result<null>> {
  if (isArchive(path)) return writeOutput(path, writePintruth(job, pictures));
  const names = imageNames(pictures);
  const folder = dirname(path);
  try {
    if (pictures.size > 0) await mkdir(join(folder, "images"), { recursive: true });
  } catch (error) {
    return fail(fileIssue(error));
  }
  for (const [file, picture] of pictures) {
    const written = await writePicture(join(folder, names.get(file) ?? file), picture.bytes);
    if (!written.ok) return written;
  }
  return writeOutput(path, writeJobText(renameImages(job, names)));
}
