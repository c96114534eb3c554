import { z } from "zod";
import { type Box, boundsOf, fail, ok, type Point, type Result } from "../base/index.ts";
import { pathText } from "../job/index.ts";
import type { LineAnswer } from "../scan/index.ts";
import { readTextPath } from "../store/files.ts";
import { doubledKey } from "./doubled-key.ts";

/** What a user says of a picture whose lines are to be followed, in its pixels. */
export interface Terminals {
  readonly terminals: Readonly<Record<string, Point>>;
  readonly parts: readonly Box[];
  readonly words: readonly Box[];
  readonly answers: readonly LineAnswer[];
  /** Fields of the file that nobody here knows. */
  readonly unknown: readonly string[];
}

const point = z.tuple([z.number(), z.number()]).readonly();
/** Two corners that lie across from one another. */
const box = z.tuple([z.number(), z.number(), z.number(), z.number()]).readonly();
const schema = z.object({
  terminals: z.record(z.string(), point),
  parts: z.array(box).optional(),
  words: z.array(box).optional(),
  answers: z
    .array(z.object({ at: point, joined: z.boolean(), stray: z.boolean().optional() }))
    .optional(),
});

const EXAMPLE = '{ "terminals": { "S1:1": [120, 80] }, "parts": [[100, 60, 120, 100]] }';

/** A terminal takes some fifty bytes: far more than a page can hold. */
const MOST_BYTES = 16 * 1024 * 1024;
/** Times that the boxes of parts, or those of words, may cover a whole picture: each is looked at for itself. */
const MOST_COVERED = 50;
/** Letters of a terminal's name, which is printed in a line of a table. */
const LONGEST_NAME = 200;

const refused = (path: string, message: string): Result<never> =>
  fail({ code: "terminals", path, message });

/** The terminals and parts that a JSON file names on a picture of this size. */
export async function readTerminals(
  file: string,
  picture: { readonly width: number; readonly height: number },
): Promise<Result<Terminals>> {
  const read = await readTextPath(file, MOST_BYTES);
  if (!read.ok) return read;
  const parsed = parseTerminals(read.value);
  return parsed.ok ? within(parsed.value, picture) : parsed;
}

function parseTerminals(text: string): Result<Terminals> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refused("", `the file is not JSON: write terminals such as ${EXAMPLE}`);
  }
  const isRecord = typeof value === "object" && value !== null && !Array.isArray(value);
  if (!isRecord) return refused("", `the file holds no terminals: write them as in ${EXAMPLE}`);
  const doubled = doubledKey(text);
  if (doubled !== null)
    return refused(doubled, "the file says that twice: keep one, or give each its own name");
  const parsed = schema.safeParse(value);
  if (!parsed.success) {
    const [first] = parsed.error.issues;
    const what = first?.message ?? "wrong";
    return refused(
      pathText(first?.path ?? []),
      `that cannot stand there (${what}): write ${EXAMPLE}`,
    );
  }
  const { terminals, parts = [], words = [], answers = [] } = parsed.data;
  // Zod passes over the one key that would reach an object's prototype; nobody's terminal may get lost.
  if (
    Object.keys((value as typeof parsed.data).terminals).length !== Object.keys(terminals).length
  ) {
    return refused("terminals", 'a terminal cannot be named "__proto__": rename it');
  }
  const long = Object.keys(terminals).find((name) => name.length > LONGEST_NAME);
  if (long !== undefined) {
    const what = JSON.stringify(`${long.slice(0, 20)}...`);
    return refused(
      "terminals",
      `the name ${what} has more than ${LONGEST_NAME} letters: write a shorter one`,
    );
  }
  const unknown = Object.keys(value as object).filter((key) => !Object.hasOwn(schema.shape, key));
  return ok({ terminals, parts: parts.map(boxOf), words: words.map(boxOf), answers, unknown });
}

const boxOf = ([x0, y0, x1, y1]: readonly [number, number, number, number]): Box =>
  boundsOf([
    [x0, y0],
    [x1, y1],
  ]) as Box;

/** Pixels of a picture that a box covers. */
const areaOn = ({ left, top, right, bottom }: Box, width: number, height: number) =>
  (Math.min(right, width) - Math.max(left, 0)) * (Math.min(bottom, height) - Math.max(top, 0));

/** What lies beside the picture is measured on another one, larger or turned: nothing of it is right. */
function within(
  given: Terminals,
  { width, height }: { readonly width: number; readonly height: number },
): Result<Terminals> {
  const size = `the picture of ${width} by ${height} pixels: measure on that picture`;
  const isOn = ([x, y]: Point) => x >= 0 && y >= 0 && x <= width && y <= height;
  const stray = Object.entries(given.terminals).find(([, at]) => !isOn(at));
  if (stray)
    return refused(pathText(["terminals", stray[0]]), `the terminal lies outside of ${size}`);
  for (const list of ["parts", "words"] as const) {
    const at = given[list].findIndex(
      ({ left, top, right, bottom }) => right < 0 || bottom < 0 || left > width || top > height,
    );
    if (at >= 0) return refused(pathText([list, at]), `the box lies outside of ${size}`);
    const covered = given[list].reduce((sum, box) => sum + areaOn(box, width, height), 0);
    if (covered > MOST_COVERED * width * height) {
      const what = `these boxes cover the picture more than ${MOST_COVERED} times over`;
      return refused(list, `${what}: give each only once, no larger than what it holds`);
    }
  }
  const lost = given.answers.findIndex(({ at }) => !isOn(at));
  if (lost >= 0)
    return refused(pathText(["answers", lost, "at"]), `the answer lies outside of ${size}`);
  return ok(given);
}
