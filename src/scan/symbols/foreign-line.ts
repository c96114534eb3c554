import type { Point } from "../../base/index.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { type Matrix, placed } from "./pose.ts";
import { nearest, type SymbolPage } from "./symbol-page.ts";

/** A straight line that runs through a symbol and is none of it: a fold of the paper, a wire that passes. */
export interface ForeignLine {
  readonly at: Point;
  /** Its way, of length 1. */
  readonly way: Point;
}

/** Places within so many line widths lie on it. */
const REACH = 1.2;
/** Share of what is strange in a symbol that must lie on it. */
const MOST = 0.8;
/** Fewer places are no line, line widths. */
const LEAST = 3;
/** It goes on beyond both ends for so long, line widths, ... */
const ON = 6;
/** ... and is drawn there for this share. */
const DRAWN = 0.85;
/** Line widths between looks. */
const STEP = 0.5;
/** A line along a lead is the symbol's own: sine of the angle between them. */
const ALONG = 0.2;

export function isOnForeign({ at, way }: ForeignLine, x: number, y: number, line: number): boolean {
  return Math.abs((x - at[0]) * way[1] - (y - at[1]) * way[0]) <= REACH * line;
}

/** The line that explains what is strange within a symbol (x and y in turn); null where none does. */
export function foreignLine(
  page: SymbolPage,
  symbol: DrawnSymbol,
  matrix: Matrix,
  strange: readonly number[],
): ForeignLine | null {
  const count = strange.length / 2;
  if (count < LEAST * page.line) return null;
  const found = axisOf(strange);
  let [on, first, last] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let n = 0; n < strange.length; n += 2) {
    const [x, y] = [strange[n] as number, strange[n + 1] as number];
    if (!isOnForeign(found, x, y, page.line)) continue;
    on++;
    const along = (x - found.at[0]) * found.way[0] + (y - found.at[1]) * found.way[1];
    first = Math.min(first, along);
    last = Math.max(last, along);
  }
  if (on < MOST * count || last - first < LEAST * page.line) return null;
  if (!goesOn(page, found, last, 1) || !goesOn(page, found, first, -1)) return null;
  return symbol.ends.some((end) => isAlong(page, found, matrix, end)) ? null : found;
}

/** The line through places that lies nearest to all of them. */
function axisOf(places: readonly number[]): ForeignLine {
  const count = places.length / 2;
  let [x, y, xx, xy, yy] = [0, 0, 0, 0, 0];
  for (let n = 0; n < places.length; n += 2) {
    x += (places[n] as number) / count;
    y += (places[n + 1] as number) / count;
  }
  for (let n = 0; n < places.length; n += 2) {
    const [dx, dy] = [(places[n] as number) - x, (places[n + 1] as number) - y];
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return { at: [x, y], way: [Math.cos(angle), Math.sin(angle)] };
}

function goesOn(page: SymbolPage, { at, way }: ForeignLine, from: number, sign: 1 | -1): boolean {
  let [on, all] = [0, 0];
  for (let by = STEP; by <= ON; by += STEP) {
    const along = from + sign * by * page.line;
    all++;
    if (nearest(page, at[0] + along * way[0], at[1] + along * way[1]) <= page.line) on++;
  }
  return on >= DRAWN * all;
}

function isAlong(
  page: SymbolPage,
  { at, way }: ForeignLine,
  matrix: Matrix,
  end: DrawnSymbol["ends"][number],
): boolean {
  const [x, y] = placed(matrix, end.at);
  const [outX, outY] = placed(matrix, [end.at[0] + end.out[0], end.at[1] + end.out[1]]);
  const [ux, uy] = [outX - x, outY - y];
  const sine = Math.abs(ux * way[1] - uy * way[0]) / Math.hypot(ux, uy);
  return sine < ALONG && isOnForeign({ at, way }, x, y, 1.5 * page.line);
}
