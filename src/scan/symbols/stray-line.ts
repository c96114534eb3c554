import type { Box } from "../../base/index.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { CELL, FARTHEST, type FarField } from "./far-field.ts";
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
  return new Int32Array(found);
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

/**
 * How far line in a symbol's zone lies from its strokes on average, line widths; `Infinity` as soon as that
 * is sure to be more than `most`. `unit`: the pose's smaller one.
 */
export function strayOf(
  page: SymbolPage,
  symbol: DrawnSymbol,
  matrix: Matrix,
  unit: number,
  line: Int32Array,
  most: number,
): number {
  const strokes = new NearStrokes(symbol, matrix);
  const farthest = 2 * page.line;
  const tooMuch = most * page.line * (line.length / 2);
  let [sum, count] = [0, 0];
  for (let n = 0; n < line.length; n += 2) {
    const units = strokes.awayFrom(line[n] as number, line[n + 1] as number);
    if (units === OUTSIDE) continue;
    sum += Math.min(units * unit, farthest);
    if (sum > tooMuch) return Number.POSITIVE_INFINITY;
    count++;
  }
  return sum / page.line / Math.max(1, count);
}

/** Line in the zone that lies away from every stroke: x and y in turn. */
export function strangeIn(
  page: SymbolPage,
  symbol: DrawnSymbol,
  matrix: Matrix,
  unit: number,
  line: Int32Array,
): readonly number[] {
  const strokes = new NearStrokes(symbol, matrix);
  const reach = 0.7 * page.line + PIXEL + SLACK * unit;
  const found: number[] = [];
  for (let n = 0; n < line.length; n += 2) {
    const [x, y] = [line[n] as number, line[n + 1] as number];
    if (strokes.awayFrom(x, y) * unit > reach) found.push(x, y);
  }
  return found;
}

/** Of a place that is not in the zone. */
const OUTSIDE = -1;

/** The strokes of a symbol in a pose. */
class NearStrokes {
  private readonly field: FarField;
  private readonly zone: Box;
  private readonly matrix: Matrix;
  private readonly det: number;
  private readonly hole: number;

  constructor(symbol: DrawnSymbol, matrix: Matrix) {
    this.field = sampledOf(symbol).field();
    this.zone = symbol.zone;
    this.matrix = matrix;
    this.det = matrix.a * matrix.d - matrix.b * matrix.c;
    this.hole = symbol.letter ? LETTER_ROOM ** 2 : 0;
  }

  /** Units from a place of the page to the nearest stroke. */
  awayFrom(px: number, py: number): number {
    const { x, y, a, b, c, d } = this.matrix;
    const { left, top, right, bottom } = this.zone;
    const [dx, dy] = [px - x, py - y];
    const ux = (d * dx - c * dy) / this.det;
    const uy = (a * dy - b * dx) / this.det;
    if (ux < left || ux > right || uy < top || uy > bottom || ux * ux + uy * uy < this.hole)
      return OUTSIDE;
    const { far, columns, rows } = this.field;
    const column = Math.round((ux - this.field.left) / CELL);
    const row = Math.round((uy - this.field.top) / CELL);
    const isIn = column >= 0 && row >= 0 && column < columns && row < rows;
    return isIn ? (far[row * columns + column] as number) : FARTHEST;
  }
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
