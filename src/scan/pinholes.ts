import type { Ink } from "./ink.ts";
import { bitsIn, lowestBit, put } from "./packed-bits.ts";
import { asPart, inBands, type Sliced } from "./sliced.ts";

/** Of so many pixels of ink one is measured. */
const STRIDE = 61;
/** Wider ink is measured only so far. */
const WIDEST = 24;

/**
 * Fills holes in ink that are neither wider nor higher than a line: white specks of a bad print, round
 * which thinning would lead two lines. Works on the picture itself.
 */
export function* fillPinholes(ink: Ink): Sliced<void> {
  const most = yield* asPart(usualWidth(ink), 0, 0.3);
  const { width, height, data } = ink.bits;
  const { across, words } = ink.packed;
  const hole: number[] = [];
  const wide = 2 * most + 1;
  const met = new Uint8Array(wide * (most + 1));
  /** Most paper beside a corner of ink is no hole, as is seen by its first row or its first column. */
  const isPaper = (at: number, step: number) => {
    for (let n = 1; n <= most; n++) if (data[at + n * step] !== 0) return false;
    return true;
  };
  const fill = (x: number, y: number) => {
    const at = y * width + x;
    if (data[at] || (x + most < width && isPaper(at, 1)) || isPaper(at, width)) return;
    if (!isWithin(x, y)) return;
    for (const pixel of hole) {
      data[pixel] = 1;
      put(ink.packed, pixel);
    }
  };
  // A hole is looked at from its first pixel only, which has ink on its left and above.
  yield* asPart(
    inBands(ink.bits, (top, bottom) => {
      for (let y = Math.max(1, top); y < bottom; y++) {
        for (let column = 0, at = y * across; column < across; column++, at++) {
          const above = words[at - across] as number;
          if (above === 0) continue;
          const here = words[at] as number;
          const before = column === 0 ? 0 : (words[at - 1] as number) >>> 31;
          let first = ~here & ((here << 1) | before) & above;
          for (; first !== 0; first &= first - 1) fill((column << 5) + lowestBit(first), y);
        }
      }
    }),
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
      const place = (row - y) * wide + column - x + most;
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
function* usualWidth({ bits, packed }: Ink): Sliced<number> {
  const { width, data } = bits;
  const { across, words } = packed;
  const counts = new Uint32Array(WIDEST + 1);
  let measured = 0;
  /** Pixels of ink until the next one that is measured. */
  let left = 0;
  const run = (at: number, step: number): number => {
    let length = 1;
    for (let on = at + step; length < WIDEST && data[on]; on += step) length++;
    for (let on = at - step; length < WIDEST && data[on]; on -= step) length++;
    return length;
  };
  const measure = (at: number) => {
    const wide = Math.min(run(at, 1), run(at, width));
    counts[wide] = (counts[wide] as number) + 1;
    measured++;
  };
  yield* inBands(bits, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      for (let column = 0; column < across; column++) {
        let word = words[y * across + column] as number;
        if (word === 0) continue;
        const count = bitsIn(word);
        if (left >= count) {
          left -= count;
          continue;
        }
        const more = count - left - 1;
        for (; left > 0; left--) word &= word - 1;
        measure(y * width + (column << 5) + lowestBit(word));
        left = STRIDE - 1 - more;
      }
    }
  });
  let sum = 0;
  for (let wide = 0; wide <= WIDEST; wide++) {
    sum += counts[wide] as number;
    if (2 * sum >= measured) return Math.max(1, wide);
  }
  return 1;
}
