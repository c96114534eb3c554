import { describeIssue, fail, type Issue, ok, type Result } from "../base/index.ts";
import type { Id, Job, JobFile, Machine } from "../job/index.ts";
import { readJobPath } from "../store/files.ts";
import { plain } from "./format/plain.ts";

/** The one line for stderr: which file, where in it, what is wrong, what to do. */
export function complaint(file: string | null, issues: readonly Issue[]): string {
  const [first, ...others] = issues;
  const what = first ? describeIssue(first) : "it cannot be used";
  const more = others.length === 0 ? "" : ` (and ${others.length} more)`;
  return plain(`pintruth: ${file === null ? "" : `${file}: `}${what}${more}`);
}

export const readJob = (file: string, want: { pictures: boolean }): Promise<Result<JobFile>> =>
  readJobPath(file, want);

/** The machine that `--machine` names, or every machine of the job. */
export function machinesOf(job: Job, wanted: Id | undefined): Result<readonly Machine[]> {
  if (wanted === undefined) return ok(job.machines);
  const machine = job.machines.find((one) => one.id === wanted);
  if (machine) return ok([machine]);
  const known = job.machines.map((one) => one.id).join(", ") || "none";
  const message = `the job has no machine ${JSON.stringify(wanted)}: choose one of its machines (${known})`;
  return fail({ code: "unknown-machine", path: "machines", message });
}
