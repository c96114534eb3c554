import { parseArgs } from "node:util";
import { fail, ok, type Result } from "../base/index.ts";
import type { Id, Job } from "../job/index.ts";
import { readJobPath } from "../store/files.ts";

/** Where a command says what it has to say. */
export interface Io {
  out(text: string): void;
  err(text: string): void;
  /** Today's date, ISO 8601, for what is dated. */
  today(): string;
}

/** A call taken apart: the files that it names and its options. */
export interface Call {
  readonly files: readonly string[];
  readonly json: boolean;
  readonly machine: Id | null;
  readonly out: string | null;
  readonly side: "mating" | "wire" | null;
  readonly size: "A4" | "Letter";
  readonly revision: string;
  readonly plug: Id | null;
}

const OPTIONS = {
  json: { type: "boolean" },
  machine: { type: "string" },
  out: { type: "string" },
  side: { type: "string" },
  size: { type: "string" },
  revision: { type: "string" },
  plug: { type: "string" },
} as const;

const badCall = (message: string) => fail({ code: "call", path: "", message });

/** Takes the words behind a command's name apart. `allowed` are the options the command has. */
export function parseCall(args: readonly string[], allowed: readonly string[]): Result<Call> {
  let parsed: ReturnType<typeof parseArgs<{ options: typeof OPTIONS; allowPositionals: true }>>;
  try {
    parsed = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
  } catch (error) {
    const [line = ""] = String((error as Error).message).split(/[.\n]/);
    return badCall(`${line}; see pintruth --help`);
  }
  const { values, positionals } = parsed;
  const stray = Object.keys(values).find((name) => !allowed.includes(name));
  if (stray) return badCall(`--${stray} does not go with this command; see pintruth --help`);
  if (positionals.length === 0) return badCall("name a job file; see pintruth --help");
  const { side, size = "A4" } = values;
  if (side !== undefined && side !== "mating" && side !== "wire")
    return badCall(`--side ${side} is not known: write mating or wire`);
  const paper =
    size.toLowerCase() === "a4" ? "A4" : size.toLowerCase() === "letter" ? "Letter" : null;
  if (!paper) return badCall(`--size ${size} is not known: write A4 or Letter`);
  return ok({
    files: positionals,
    json: values.json ?? false,
    machine: values.machine ?? null,
    out: values.out ?? null,
    side: side ?? null,
    size: paper,
    revision: values.revision ?? "1",
    plug: values.plug ?? null,
  });
}

/** The job of a file, its pictures left out. */
export async function readJob(file: string): Promise<Result<Job>> {
  const read = await readJobPath(file, { pictures: false });
  return read.ok ? ok(read.value.job) : read;
}

/** The machines that a call is about: the one it names, else all. */
export function machinesOf(job: Job, machine: Id | null): Result<readonly Id[]> {
  const ids = job.machines.map((one) => one.id);
  if (ids.length === 0) return badCall("the job has no machine: add one in the editor");
  if (machine === null) return ok(ids);
  if (ids.includes(machine)) return ok([machine]);
  return badCall(`there is no machine ${machine}; the job has ${ids.join(", ")}`);
}
