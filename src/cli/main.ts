import { AnswerStream } from "./answer-stream.ts";
import { execute } from "./execute.ts";
import { EXIT, type Io } from "./io.ts";
import { complaint } from "./job-input.ts";

/** `2026-03-01`: the date on the wall, not in Greenwich. */
function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Runs the command line; the arguments are those after the program's own name. */
export async function main(argv: readonly string[]): Promise<number> {
  const answer = new AnswerStream(process.stdout);
  const io: Io = {
    out: (text) => answer.write(text),
    err: (line) => void process.stderr.write(`${line}\n`),
    today,
  };
  const status = await execute(argv, io);
  const trouble = await answer.trouble();
  if (trouble === null) return status;
  io.err(complaint("the answer", [trouble]));
  return EXIT.bad;
}
