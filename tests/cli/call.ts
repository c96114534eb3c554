import { execute } from "../../src/cli/execute.ts";

/** Runs the command line with these arguments, and tells all that it said. */
export async function call(...argv: string[]) {
  let out = "";
  let err = "";
  const status = await execute(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += `${text.trimEnd()}\n`;
    },
    today: () => "2026-11-25",
  });
  return { status, out, err };
}
