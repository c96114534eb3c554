import { describeIssue, fail, type Issue, ok, type Result } from "../base/index.ts";
import type { Id, Job, JobFile, Machine } from "../job/index.ts";
import { settle } from "../readings/index.ts";
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

/** A job and the machines of it that a command is asked about. */
export interface JobWithMachines {
  readonly job: Job;
  /** Those that `--machine` names, else all; none in a job that has none. */
  readonly machines: readonly Machine[];
}

/** Reads a job, without its pictures, and finds the machine that `--machine` names, or all. */
export async function readWithMachines(
  file: string,
  wanted: Id | undefined,
): Promise<Result<JobWithMachines>> {
  const read = await readJob(file, { pictures: false });
  if (!read.ok) return read;
  const { job } = read.value;
  const machines = machinesOf(job, wanted);
  // no command changes a job: what is solved for one reading serves all the others
  return machines.ok ? ok({ job: settle(job), machines: machines.value }) : machines;
}

/** The machine that `--machine` names, or every machine of the job. */
function machinesOf(job: Job, wanted: Id | undefined): Result<readonly Machine[]> {
  if (wanted === undefined) return ok(job.machines);
  const machine = job.machines.find((one) => one.id === wanted);
  if (machine) return ok([machine]);
  const known = job.machines.map((one) => one.id).join(", ") || "none";
  const message = `the job has no machine ${JSON.stringify(wanted)}: choose one of its machines (${known})`;
  return fail({ code: "unknown-machine", path: "machines", message });
}
