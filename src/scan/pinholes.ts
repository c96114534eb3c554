import { inkPixels } from "./ink-pixels.ts";
import type { Bits } from "./raster.ts";
import { asPart, inBands, type Sliced } from "./sliced.ts";

/** Of so many pixels of ink one is measured. */
const STRIDE = 61;
/** Wider ink is measured only so far. */
const WIDEST = 24;

/**
 * Fills holes in ink that are neither wider nor higher than a line: white specks of a bad print, round
 * which thinning would lead two lines. Works on the picture itself.
 */
export function* fillPinholes(ink: Bits): Sliced<void> {
  const most = yield* asPart(usualWidth(ink), 0, 0.3);
  const { width, height, data } = ink;
  const inkIn = inkPixels(ink);
  const hole: number[] = [];
  const across = 2 * most + 1;
  const met = new Uint8Array(across * (most + 1));
  // A hole is looked at from its first pixel only, which has ink on its left and above.
  const look = (left: number) => {
    const at = left + 1;
    if (data[at] || at < width || !data[at - width] || at % width === 0) return;
    if (isWithin(at % width, Math.floor(at / width))) for (const pixel of hole) data[pixel] = 1;
  };
  yield* asPart(
    inBands(ink, (top, bottom) => inkIn(top * width, bottom * width, look)),
    0.3,
    1,
  );

  /** Gathers all pixels of the hole that one belongs to; false where it is larger. */
  function isWithin(x: number, y: number): boolean {
    hole.length = 0;
    met.fill(0);
    let [first, last] = [x, x];
    const meet = (column: number, row: number): boolean => {
      if (data[row * width + column]) return true;
      [first, last] = [Math.min(first, column), Math.max(last, column)];
      if (row < y || row - y >= most || last - first >= most) return false;
      if (column === 0 || row === height - 1 || column === width - 1) return false;
      const place = (row - y) * across + column - x + most;
      if (met[place]) return true;
      met[place] = 1;
      hole.push(row * width + column);
      return true;
    };
    if (!meet(x, y)) return false;
    for (let n = 0; n < hole.length; n++) {
      const at = hole[n] as number;
      const row = Math.floor(at / width);
      const column = at - row * width;
      if (!meet(column, row + 1) || !meet(column, row - 1)) return false;
      if (!meet(column + 1, row) || !meet(column - 1, row)) return false;
    }
    return true;
  }
}

/** The middle of how wide ink is, across or down, whichever is less: a line's width in whole pixels. */
function* usualWidth(ink: Bits): Sliced<number> {
  const { width, data } = ink;
  const inkIn = inkPixels(ink);
  const counts = new Uint32Array(WIDEST + 1);
  let [seen, measured] = [0, 0];
  const run = (at: number, step: number): number => {
    let length = 1;
    for (let on = at + step; length < WIDEST && data[on]; on += step) length++;
    for (let on = at - step; length < WIDEST && data[on]; on -= step) length++;
    return length;
  };
  const measure = (at: number) => {
    if (seen++ % STRIDE > 0) return;
    const wide = Math.min(run(at, 1), run(at, width));
    counts[wide] = (counts[wide] as number) + 1;
    measured++;
  };
  yield* inBands(ink, (top, bottom) => inkIn(top * width, bottom * width, measure));
  let sum = 0;
  for (let wide = 0; wide <= WIDEST; wide++) {
    sum += counts[wide] as number;
    if (2 * sum >= measured) return Math.max(1, wide);
  }
  return 1;
}
