import { type PickedFile, pickFiles } from "./file-transfer.ts";
import type { JobDesk } from "./job-desk.ts";
import { isJobFile } from "./job-files.ts";

/** Asks for a job file and opens it. Whatever was picked is tried: what is in it decides. */
export async function openPicked(desk: JobDesk): Promise<void> {
  const files = await pickFiles();
  if (files) await openFirstJob(desk, files);
}

export async function openFirstJob(desk: JobDesk, files: readonly PickedFile[]): Promise<void> {
  const job = files.find(isJobFile) ?? files[0];
  if (job)
    await desk.openFile(
      job,
      files.filter((one) => one !== job),
    );
}
