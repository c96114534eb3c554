import { execute } from "./execute.ts";
import type { Io } from "./io.ts";

/** `2026-03-01`: the date on the wall, not in Greenwich. */
function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Runs the command line; the arguments are those after the program's own name. */
export function main(argv: readonly string[]): Promise<number> {
  // Whoever reads our answer may have seen enough (`pintruth check ... | head`).
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
  });
  const io: Io = {
    out: (text) => void process.stdout.write(text),
    err: (line) => void process.stderr.write(`${line}\n`),
    today,
  };
  return execute(argv, io);
}
