import { type Grey, greyOf } from "./raster.ts";
import { asPart, inBands, type Sliced } from "./sliced.ts";
import { Counts } from "./threshold.ts";

/** Cells on the shorter side of the page: fine enough for a shadow's edge, coarser than words. */
const CELLS = 64;
const SMALLEST_CELL = 12;
/** Of the pixels of a cell this share is darker than its paper: more than ink ever covers. */
const PAPER_SHARE = 0.8;
/** Rows of cells a slice. */
const ROWS = 2;

/** A coarse picture of the paper alone: one brightness a cell. */
export interface PaperTone {
  readonly cell: number;
  readonly across: number;
  readonly down: number;
  readonly tone: Float32Array;
}

/**
 * What the paper would look like without ink: of each cell its bright pixels, of a cell that ink
 * fills those of its neighbours, all smoothed. Shadows and yellowed corners are in it, lines are not.
 */
export function* paperTones(grey: Grey): Sliced<PaperTone> {
  const { width, height, data } = grey;
  const cell = Math.max(SMALLEST_CELL, Math.round(Math.min(width, height) / CELLS));
  const across = Math.ceil(width / cell);
  const down = Math.ceil(height / cell);
  const tone = new Float32Array(across * down);
  const counts = new Counts();
  for (let row = 0; row < down; row++) {
    for (let column = 0; column < across; column++) {
      counts.clear();
      const [left, right] = [column * cell, Math.min(width, (column + 1) * cell)];
      const [top, bottom] = [row * cell, Math.min(height, (row + 1) * cell)];
      for (let y = top; y < bottom; y++) {
        counts.add(data, y * width + left, y * width + right);
      }
      tone[row * across + column] = counts.quantile((right - left) * (bottom - top), PAPER_SHARE);
    }
    if (row % ROWS === ROWS - 1) yield row / down;
  }
  const filled = spread(tone, across, down, (values) => Math.max(...values));
  const smooth = spread(filled, across, down, (values) => mean(values));
  return { cell, across, down, tone: smooth };
}

/** As `flattenedAndCounted`, the picture alone. */
export function* flattened(grey: Grey): Sliced<Grey> {
  const { flat } = yield* flattenedAndCounted(grey);
  return flat;
}

/**
 * The picture with its paper made white: each pixel against the paper under it. `counts` has how many of
 * its pixels have each brightness.
 */
export function* flattenedAndCounted(
  grey: Grey,
): Sliced<{ readonly flat: Grey; readonly counts: Uint32Array }> {
  const { width, height, data } = grey;
  const paper = yield* asPart(paperTones(grey), 0, 0.4);
  const out = greyOf(width, height);
  const flat = out.data;
  const pieces = new Float64Array(3 * (paper.across + 1));
  const counts = new Counts();
  yield* asPart(
    inBands(grey, (top, bottom) => {
      for (let y = top; y < bottom; y++) {
        piecesAlong(paper, y, width, pieces);
        flattenRow(data, flat, y * width, pieces);
        counts.add(flat, y * width, (y + 1) * width);
      }
    }),
    0.4,
    1,
  );
  return { flat: out, counts: counts.all() };
}

/** `pieces` are those of `piecesAlong`: the paper's brightness is made of them as `paperAlong` does it. */
function flattenRow(data: Uint8Array, flat: Uint8Array, row: number, pieces: Float64Array) {
  for (let n = 0, x = 0; n < pieces.length; n += 3) {
    const end = pieces[n] as number;
    let white = pieces[n + 1] as number;
    const slope = pieces[n + 2] as number;
    for (; x < end; x++, white += slope) {
      const light = (((data[row + x] as number) * 255) / Math.fround(Math.max(1, white))) | 0;
      // All bits, the byte 255, where it is brighter than its paper: grain would make a jump a bad guess.
      flat[row + x] = light | ((255 - light) >> 31);
    }
  }
}

/** The paper's brightness under each pixel of a row, 1 at least. */
export function paperAlong(paper: PaperTone, y: number, into: Float32Array) {
  const pieces = new Float64Array(3 * (paper.across + 1));
  piecesAlong(paper, y, into.length, pieces);
  for (let n = 0, x = 0; n < pieces.length; n += 3) {
    const end = pieces[n] as number;
    let white = pieces[n + 1] as number;
    const slope = pieces[n + 2] as number;
    for (; x < end; x++, white += slope) into[x] = Math.max(1, white);
  }
}

/**
 * The paper's brightness along a row in straight pieces, from the middle of one cell to that of the next,
 * and level beyond the last: of each the pixel at which it has ended, how bright it begins, and by how
 * much it grows from pixel to pixel.
 */
function piecesAlong(
  { cell, across, down, tone }: PaperTone,
  y: number,
  width: number,
  into: Float64Array,
) {
  const [row, below, share] = between(y, cell, down);
  const line = new Float32Array(across);
  for (let column = 0; column < across; column++) {
    const upper = tone[row * across + column] as number;
    const lower = tone[below * across + column] as number;
    line[column] = upper + (lower - upper) * share;
  }
  for (let x = 0, column = 0; column <= across; column++) {
    const left = line[Math.max(0, column - 1)] as number;
    const right = line[Math.min(across - 1, column)] as number;
    const middle = (column + 0.5) * cell - 0.5;
    const end = column < across ? Math.min(width, Math.ceil(middle)) : width;
    const slope = (right - left) / cell;
    into[3 * column] = end;
    into[3 * column + 1] = right + slope * (x - middle);
    into[3 * column + 2] = slope;
    x = Math.max(x, end);
  }
}

/** The two cells between whose middles a pixel lies, and how far it is on the way. */
function between(at: number, cell: number, count: number): [number, number, number] {
  const place = Math.max(0, Math.min(count - 1, (at + 0.5) / cell - 0.5));
  const low = Math.floor(place);
  return [low, Math.min(count - 1, low + 1), place - low];
}

/** Each cell made anew from itself and its neighbours. */
function spread(
  tone: Float32Array,
  across: number,
  down: number,
  from: (values: readonly number[]) => number,
): Float32Array {
  return tone.map((_, at) => {
    const [column, row] = [at % across, Math.floor(at / across)];
    const values: number[] = [];
    for (let y = Math.max(0, row - 1); y <= Math.min(down - 1, row + 1); y++) {
      for (let x = Math.max(0, column - 1); x <= Math.min(across - 1, column + 1); x++) {
        values.push(tone[y * across + x] as number);
      }
    }
    return from(values);
  });
}

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
