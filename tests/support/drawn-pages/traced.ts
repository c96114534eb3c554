import {
  type Box,
  boundsOf,
  type Point,
  type Random,
  seededRandom,
} from "../../../src/base/index.ts";
import { greyFrom } from "../../../src/scan/raster.ts";
import { type Harmed, harmed, randomHarm } from "./degrade.ts";
import { type DrawnPage, drawPage } from "./draw.ts";
import { type MadePage, makePage } from "./lattice.ts";
import { randomStyle } from "./style.ts";
import { tracedPicture } from "./traced-picture.ts";

/** Pairs of terminals, by what is true and what was said; `wanted` is the joins a page asks for. */
export interface Score {
  readonly right: number;
  readonly wrong: number;
  readonly missed: number;
  readonly questions: number;
  readonly wanted: number;
}

/** A page as it is traced, and all that is known of it. */
export interface HarmedPage {
  readonly page: MadePage;
  readonly drawn: DrawnPage;
  readonly out: Harmed;
  /** Where they are found in the picture. */
  readonly terminals: Readonly<Record<string, Point>>;
  readonly parts: readonly Box[];
}

/** Makes, draws and harms the page of a seed; `size` is the columns and rows of its lattice. */
export async function harmedPage(
  seed: number,
  level: number,
  dpis: readonly number[],
  size: Point,
): Promise<HarmedPage> {
  const random: Random = seededRandom(seed);
  const page = makePage(random, ...size);
  const style = randomStyle(random);
  const dpi = random.pick(dpis);
  const drawn = drawPage(random, page, style, dpi);
  const line = Math.max(1, (style.line * dpi) / 25.4);
  const out = await harmed(random, drawn.picture, randomHarm(random, level), line);
  const terminals = Object.fromEntries(
    Object.entries(drawn.terminals).map(([name, at]) => [name, out.moved(at)]),
  );
  const parts = drawn.parts.flatMap(([left, top, right, bottom]) => {
    const corners: Point[] = [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ];
    return boundsOf(corners.map(out.moved)) ?? [];
  });
  return { page, drawn, out, terminals, parts };
}

/** Traces one page of a seed, and counts what came of it. */
export async function scoreOf(...args: Parameters<typeof harmedPage>): Promise<Score> {
  const { page, out, terminals, parts } = await harmedPage(...args);
  const { nets, questions } = tracedPicture(greyFrom(out.picture), { terminals, parts });
  return comparedWith(
    page,
    nets.map((net) => net.terminals),
    questions.length,
  );
}

export function comparedWith(
  page: MadePage,
  said: readonly (readonly string[])[],
  questions: number,
): Score {
  const real = page.nets.map(({ terminals }) => terminals.map(({ name }) => name));
  const wanted = real.reduce((sum, names) => sum + names.length - 1, 0);
  const [truth, told] = [pairsIn(real), pairsIn(said)];
  const right = [...told].filter((pair) => truth.has(pair)).length;
  return { right, wrong: told.size - right, missed: truth.size - right, questions, wanted };
}

function pairsIn(nets: readonly (readonly string[])[]): ReadonlySet<string> {
  return new Set(
    nets.flatMap((names) => {
      const sorted = [...names].sort();
      return sorted.flatMap((a, n) => sorted.slice(n + 1).map((b) => `${a} ${b}`));
    }),
  );
}

export const sumOf = (scores: readonly Score[]): Score =>
  scores.reduce((sum, score) => ({
    right: sum.right + score.right,
    wrong: sum.wrong + score.wrong,
    missed: sum.missed + score.missed,
    questions: sum.questions + score.questions,
    wanted: sum.wanted + score.wanted,
  }));
