import { type CheckResult, checkJob } from "../../check/index.ts";
import type { Job, Machine } from "../../job/index.ts";
import { checkText } from "../format/check-text.ts";
import { EXIT, type Exit, type Io } from "../io.ts";
import { complaint, readWithMachines } from "../job-input.ts";
import type { Call, Command } from "./command.ts";

/** A job in which no machine has been entered is checked as drawn. */
const AS_DRAWN: readonly null[] = [null];

interface Work {
  readonly file: string;
  readonly job: Job;
  readonly machines: readonly (Machine | null)[];
}

/** Reads a file and finds the machines asked for; says what is wrong and gives null when it can't. */
async function workOf(file: string, call: Call, io: Io): Promise<Work | null> {
  const read = await readWithMachines(file, call.value("machine"));
  if (!read.ok) {
    io.err(complaint(file, read.issues));
    return null;
  }
  const { job, machines } = read.value;
  return { file, job, machines: machines.length > 0 ? machines : AS_DRAWN };
}

function jsonLine(file: string, machine: Machine | null, result: CheckResult): string {
  const { roles, findings, summary } = result;
  return `${JSON.stringify({ file, machine: machine?.id ?? null, roles, findings, summary })}\n`;
}

/** Every file is read before anything is said of one, and each bad one is told. */
export const check: Command = {
  name: "check",
  takes: "JOB...",
  does: "what every pin is, and everything that contradicts",
  input: "job file",
  files: "several",
  options: ["json", "machine"],
  needs: [],
  async run(call, io) {
    const works: Work[] = [];
    for (const file of call.files) {
      const work = await workOf(file, call, io);
      if (work) works.push(work);
    }
    if (works.length < call.files.length) return EXIT.bad;
    let exit: Exit = EXIT.done;
    for (const { file, job, machines } of works) {
      for (const machine of machines) {
        const result = checkJob(job, machine?.id ?? "");
        io.out(call.json ? jsonLine(file, machine, result) : checkText(file, machine, result));
        if (result.summary.contradictions > 0) exit = EXIT.contradicted;
      }
    }
    return exit;
  },
};
