import { inkPixels } from "../ink-pixels.ts";
import { IntList } from "../int-list.ts";
import type { Bits } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";

/** How a line runs: along the rows of a picture or down its columns. */
export type LineWay = "level" | "upright";

/** Pixels as a line sees them: `place` counts along it, `row` across it. */
export interface Along {
  /** How many there are along a line and across it. */
  readonly length: number;
  readonly count: number;
  /** From one pixel to the next along it and across it. */
  readonly along: number;
  readonly across: number;
}

export const alongOf = ({ width, height }: Bits, way: LineWay): Along =>
  way === "level"
    ? { length: width, count: height, along: 1, across: width }
    : { length: height, count: width, along: width, across: 1 };

/** One line: at each place from `from` on, the first and the last of the rows that it covers. */
export interface LineBand {
  readonly from: number;
  readonly firsts: IntList;
  readonly lasts: IntList;
}

/** Places in a slice. */
const SLICE = 20_000;

/** The lines that `own` is made of. Where two grow together one of them ends. */
export function* lineBandsOf(own: Bits, way: LineWay): Sliced<readonly LineBand[]> {
  const { count, along, across } = alongOf(own, way);
  const tops = yield* asPart(topsOf(own, way), 0, 0.5);
  const bands: LineBand[] = [];
  /** Of each row the place at which it last was a line's, and of which. */
  const seen = new Int32Array(count).fill(-2);
  const whose = new Int32Array(count);
  for (let top = 0; top < tops.length; top++) {
    if (top % SLICE === SLICE - 1) yield 0.5 + (0.5 * top) / tops.length;
    const at = tops[top] as number;
    const place = way === "level" ? at % own.width : Math.floor(at / own.width);
    const first = (at - place * along) / across;
    let last = first;
    while (last + 1 < count && own.data[at + (last + 1 - first) * across]) last++;
    let band: LineBand | undefined;
    let number = -1;
    for (let row = first; row <= last && !band; row++) {
      if (seen[row] !== place - 1) continue;
      number = whose[row] as number;
      const known = bands[number] as LineBand;
      // Another branch of it may have gone on already.
      if (known.from + known.firsts.length === place) band = known;
    }
    if (!band) {
      number = bands.length;
      band = { from: place, firsts: new IntList(16), lasts: new IntList(16) };
      bands.push(band);
    }
    band.firsts.push(first);
    band.lasts.push(last);
    seen.fill(place, first, last + 1);
    whose.fill(number, first, last + 1);
  }
  return bands;
}

/**
 * Where lines begin, seen across them: of level ones the upper edge, from the left column to the right;
 * of upright ones the left edge, from the upper row down.
 */
function* topsOf(own: Bits, way: LineWay): Sliced<Int32Array> {
  const { width, data } = own;
  const inkIn = inkPixels(own);
  const found = new IntList();
  const add = (at: number) => {
    const isTop =
      way === "level" ? at < width || !data[at - width] : at % width === 0 || !data[at - 1];
    if (isTop) found.push(at);
  };
  yield* inBands(own, (top, bottom) => inkIn(top * width, bottom * width, add));
  return way === "level" ? byColumn(found, width) : found.values();
}

/** Places in order of the rows put in order of the columns, from the top down in each. */
function byColumn(places: IntList, width: number): Int32Array {
  const next = new Int32Array(width + 1);
  for (let n = 0; n < places.length; n++) {
    const after = (places.at(n) % width) + 1;
    next[after] = (next[after] as number) + 1;
  }
  for (let x = 0; x < width; x++) next[x + 1] = (next[x + 1] as number) + (next[x] as number);
  const sorted = new Int32Array(places.length);
  for (let n = 0; n < places.length; n++) {
    const x = places.at(n) % width;
    sorted[next[x] as number] = places.at(n);
    next[x] = (next[x] as number) + 1;
  }
  return sorted;
}
