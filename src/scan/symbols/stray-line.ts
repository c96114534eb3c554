import { STEPS_PER_PIXEL } from "../distance.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { CELL, FARTHEST } from "./far-field.ts";
import { type ForeignLine, isOnForeign } from "./foreign-line.ts";
import { ON, PIXEL, SLACK } from "./point-marks.ts";
import { type Matrix, placedBox } from "./pose.ts";
import { type Sampled, sampledOf } from "./sampled.ts";
import type { SymbolPage } from "./symbol-page.ts";

/** Radius within which a machine's letter stands, units. */
export const LETTER_ROOM = 1.35;

/** Places of thinned line in and about a symbol's zone: x and y in turn. */
export function lineAround(page: SymbolPage, { zone }: DrawnSymbol, matrix: Matrix): Int32Array {
  const { left, top, right, bottom } = placedBox(matrix, zone);
  const by = page.line;
  const { xs, rows } = page.places;
  const found: number[] = [];
  const last = Math.min(page.height - 1, bottom + by);
  for (let y = Math.max(0, Math.floor(top - by)); y <= last; y++) {
    const end = rows[y + 1] as number;
    for (let n = from(xs, rows[y] as number, end, left - by); n < end; n++) {
      const x = xs[n] as number;
      if (x > right + by) break;
      found.push(x, y);
    }
  }
  return Int32Array.from(found);
}

/** The first of a row's places, from one number on, that is not to the left of `left`. */
function from(xs: Int32Array, first: number, end: number, left: number): number {
  let [low, high] = [first, end];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((xs[middle] as number) < left) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** How line in a symbol's zone lies to its strokes. */
export interface Stray {
  /** Line widths to the nearest stroke, added up. */
  readonly sum: number;
  readonly count: number;
}

/** `unit`: the pose's smaller one. */
export function strayOf(
  page: SymbolPage,
  symbol: DrawnSymbol,
  matrix: Matrix,
  unit: number,
  line: Int32Array,
): Stray {
  const away = awayOf(symbol, matrix, line);
  const most = 2 * page.line;
  let [sum, count] = [0, 0];
  for (let n = 0; n < away.length; n++) {
    const units = away[n] as number;
    if (units === OUTSIDE) continue;
    sum += Math.min(units * unit, most);
    count++;
  }
  return { sum: sum / page.line, count };
}

/** Line in the zone that lies away from every stroke: x and y in turn. */
export function strangeIn(
  page: SymbolPage,
  symbol: DrawnSymbol,
  matrix: Matrix,
  unit: number,
  line: Int32Array,
): readonly number[] {
  const away = awayOf(symbol, matrix, line);
  const reach = 0.7 * page.line + PIXEL + SLACK * unit;
  const found: number[] = [];
  for (let n = 0; n < away.length; n++) {
    if ((away[n] as number) * unit > reach) {
      found.push(line[2 * n] as number, line[2 * n + 1] as number);
    }
  }
  return found;
}

/** Of a place that is not in the zone. */
const OUTSIDE = -1;

/** Units from each place of line to the nearest stroke. */
function awayOf(symbol: DrawnSymbol, { x, y, a, b, c, d }: Matrix, line: Int32Array): Float32Array {
  const { far, columns, rows, left: fieldLeft, top: fieldTop } = sampledOf(symbol).field();
  const { left, top, right, bottom } = symbol.zone;
  const det = a * d - b * c;
  const hole = symbol.letter ? LETTER_ROOM ** 2 : 0;
  const away = new Float32Array(line.length / 2);
  for (let n = 0; n < away.length; n++) {
    const [dx, dy] = [(line[2 * n] as number) - x, (line[2 * n + 1] as number) - y];
    const ux = (d * dx - c * dy) / det;
    const uy = (a * dy - b * dx) / det;
    if (ux < left || ux > right || uy < top || uy > bottom || ux * ux + uy * uy < hole) {
      away[n] = OUTSIDE;
      continue;
    }
    const column = Math.round((ux - fieldLeft) / CELL);
    const row = Math.round((uy - fieldTop) / CELL);
    const isIn = column >= 0 && row >= 0 && column < columns && row < rows;
    away[n] = isIn ? (far[row * columns + column] as number) : FARTHEST;
  }
  return away;
}

/** So many places of strange line, to the length of the symbol's own. */
export const clutterOf = (symbol: DrawnSymbol, unit: number, places: number): number =>
  places / (sampledOf(symbol).length * unit);

/** Of where paper must be, the share that is not; what lies on a foreign line is passed over. */
export function inkedOf(
  { near, ink, width, height, line }: SymbolPage,
  { bare }: Sampled,
  { x, y, a, b, c, d }: Matrix,
  foreign: ForeignLine | null = null,
): number {
  if (bare.length === 0) return 0;
  const reach = (ON * line + PIXEL) * STEPS_PER_PIXEL;
  let inked = 0;
  for (let n = 0; n < bare.length; n += 2) {
    const [px, py] = [bare[n] as number, bare[n + 1] as number];
    const column = x + a * px + c * py + 0.5;
    const row = y + b * px + d * py + 0.5;
    if (!(column >= 0 && row >= 0 && column < width && row < height)) continue;
    const at = (row | 0) * width + (column | 0);
    if (foreign && isOnForeign(foreign, column - 0.5, row - 0.5, line)) continue;
    if ((near[at] as number) <= reach || ink.data[at]) inked++;
  }
  return (2 * inked) / bare.length;
}
