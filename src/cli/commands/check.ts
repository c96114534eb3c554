import { checkJob } from "../../check/index.ts";
import { type Call, type Io, machinesOf, readJob } from "../call.ts";
import { checkInWords } from "../format/check-words.ts";
import { complain, type Status } from "../status.ts";

/** Checks each job on each machine. Every file is read before anything is said. */
export async function check(call: Call, io: Io): Promise<Status> {
  const jobs = [];
  for (const file of call.files) {
    const job = await readJob(file);
    if (!job.ok) return complain(io, file, job.issues);
    const machines = machinesOf(job.value, call.machine);
    if (!machines.ok) return complain(io, file, machines.issues);
    jobs.push({ file, job: job.value, machines: machines.value });
  }
  let contradictions = 0;
  for (const { file, job, machines } of jobs) {
    for (const machine of machines) {
      const { roles, findings, summary } = checkJob(job, machine);
      contradictions += summary.contradictions;
      io.out(
        call.json
          ? `${JSON.stringify({ file, machine, roles, findings, summary })}\n`
          : checkInWords(file, job, { machine, roles, findings, summary }),
      );
    }
  }
  return contradictions > 0 ? 1 : 0;
}
