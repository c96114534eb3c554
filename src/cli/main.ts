import { execute } from "./execute.ts";

/** The command line on the terminal that it was called from. */
export const main = (argv: readonly string[]): Promise<number> =>
  execute(argv, {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    today: () => new Date().toISOString().slice(0, 10),
  });
