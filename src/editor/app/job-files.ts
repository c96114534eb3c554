import { describeIssue, type Issue } from "../../base/index.ts";
import {
  imageFilesOf,
  type Job,
  missingPictures,
  type Picture,
  pictureType,
  readJobFile,
  renameImages,
  writeJobText,
  writePintruth,
} from "../../job/index.ts";
import type { JobStore } from "../../store/index.ts";
import { JOB_ENDINGS, type PickedFile } from "./file-transfer.ts";

export const isJobFile = ({ name }: { readonly name: string }) =>
  JOB_ENDINGS.some((ending) => name.toLowerCase().endsWith(ending));

/** One sentence for the user, with the path to the first fault. */
function faultText(name: string, issues: readonly Issue[]): string {
  const [first] = issues;
  const more = issues.length > 1 ? ` (and ${issues.length - 1} more)` : "";
  return `${name} was not opened: ${first ? describeIssue(first) : "it holds no job."}${more}`;
}

const baseName = (file: string) => file.split("/").at(-1) ?? file;

/** A file as it was read from wherever it lies. */
export type NamedBytes = Pick<PickedFile, "name" | "bytes">;

/** The job of a file with the names of pictures that it lacks, or why there is none, one sentence. */
export type TakenFile =
  | { readonly job: Job; readonly missing: readonly string[] }
  | { readonly fault: string };

/** Takes a job file in, with what lies beside it, in whatever thread that is done. */
export type FileReading = (file: NamedBytes, beside: readonly NamedBytes[]) => Promise<TakenFile>;

/**
 * Reads a job file and keeps its pictures in the store. Pictures that lie beside a `.json` file
 * are taken from `beside`, by name.
 */
export async function takeJobFile(
  file: NamedBytes,
  beside: readonly NamedBytes[],
  store: Pick<JobStore, "putPicture">,
): Promise<TakenFile> {
  const read = readJobFile(file.bytes, file.name);
  if (!read.ok) return { fault: faultText(file.name, read.issues) };
  const { job } = read.value;
  const pictures = new Map<string, Picture>(read.value.pictures);
  for (const wanted of missingPictures(job, pictures)) {
    const own = beside.find((one) => one.name === baseName(wanted));
    const type = own && pictureType(own.bytes, own.name, "");
    if (own && type?.ok) pictures.set(wanted, { bytes: own.bytes, type: type.value.type });
  }
  const names = new Map<string, string>();
  for (const [name, picture] of pictures) names.set(name, await store.putPicture(picture));
  return { job: renameImages(job, names), missing: missingPictures(job, pictures) };
}

/** The bytes of a `.pintruth` file with every picture of the job that the store holds. */
export async function pintruthBlob(job: Job, store: JobStore): Promise<Blob> {
  const pictures = new Map<string, Picture>();
  for (const file of imageFilesOf(job)) {
    const picture = await store.getPicture(file);
    if (picture) pictures.set(file, picture);
  }
  return new Blob([writePintruth(job, pictures) as BlobPart], { type: "application/zip" });
}

export const jsonBlob = (job: Job): Blob =>
  new Blob([writeJobText(job)], { type: "application/json" });
