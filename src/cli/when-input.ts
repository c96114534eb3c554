import { fail, type Issue, ok, type Result } from "../base/index.ts";
import { type When, whenSchema } from "../job/index.ts";
import { readTextPath } from "../store/files.ts";
import { doubledKey } from "./doubled-key.ts";

const FIELDS = Object.keys(whenSchema.shape);
const EXAMPLE = '{ "switches": { "S1": "run" }, "unplugged": ["A1"] }';

/** A state names switches and parts: far less than this. */
const MOST_BYTES = 1024 * 1024;

const refused = (path: string, message: string): Result<never> =>
  fail({ code: "when", path, message } satisfies Issue);

/**
 * The state that a JSON file describes. A field that no state has is refused: passed over in
 * silence, it would give the answer for another state than the one asked for.
 */
export async function readWhen(file: string): Promise<Result<When>> {
  const read = await readTextPath(file, MOST_BYTES);
  return read.ok ? parseWhen(read.value) : read;
}

export function parseWhen(text: string): Result<When> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refused("", `the file is not JSON: write a state such as ${EXAMPLE}`);
  }
  const isRecord = typeof value === "object" && value !== null && !Array.isArray(value);
  if (!isRecord) return refused("", `the file holds no state: write one such as ${EXAMPLE}`);
  const unknown = Object.keys(value as object).find((key) => !FIELDS.includes(key));
  if (unknown !== undefined) {
    return refused(
      "",
      `a state has no field ${JSON.stringify(unknown.slice(0, 60))}: it may have ${FIELDS.join(", ")}`,
    );
  }
  const doubled = doubledKey(text);
  if (doubled !== null) return refused(doubled, "the file says that twice: keep one");
  const parsed = whenSchema.safeParse(value);
  if (parsed.success) return ok(parsed.data);
  const [first] = parsed.error.issues;
  return refused(
    first?.path.map(String).join(".") ?? "",
    `that is not what a state has there (${first?.message ?? "wrong"}): write it as in ${EXAMPLE}`,
  );
}
