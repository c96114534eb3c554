import { inkPixels } from "../ink-pixels.ts";
import { IntList } from "../int-list.ts";
import { type Bits, bitsOf } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";

/** A straight run this many line widths long is a line: no letter on a drawing has one. */
const LONG = 15;
/** What sticks out of a line by no more than this share of its width is its ragged edge. */
const RAGGED = 0.5;

export interface WithoutLines {
  /** Ink that is left: letters, and what symbols have of curves and short strokes. */
  readonly ink: Bits;
  /** Ink that was taken away. */
  readonly lines: Bits;
  /** Of all ink, what is part of a level line, and what of an upright one. */
  readonly level: Bits;
  readonly upright: Bits;
}

/**
 * Takes level and upright lines out of the ink. Where a letter's stroke goes through a line, the piece of
 * line between its two ends is given back, so that the letter stays whole.
 */
export function* withoutLines(ink: Bits, lineWidth: number): Sliced<WithoutLines> {
  const { width, height, data } = ink;
  const least = Math.max(24, LONG * lineWidth);
  const ragged = Math.max(1, Math.round(RAGGED * lineWidth));
  const level = yield* asPart(levelRuns(ink, least), 0, 0.15);
  const upright = yield* asPart(uprightRuns(ink, least), 0.15, 0.3);
  const lines = bitsOf(width, height);
  const left = bitsOf(width, height);
  const inkIn = inkPixels(ink);
  const part = (at: number) => {
    if (level.data[at] || upright.data[at]) lines.data[at] = 1;
    else left.data[at] = data[at] as number;
  };
  yield* asPart(
    inBands(ink, (top, bottom) => inkIn(top * width, bottom * width, part)),
    0.3,
    0.45,
  );
  yield* asPart(mend(left, lines, level, "level", ragged), 0.45, 0.75);
  yield* asPart(mend(left, lines, upright, "upright", ragged), 0.75, 1);
  return { ink: left, lines, level, upright };
}

/** Runs of ink along the rows that are at least so long. */
function* levelRuns(ink: Bits, least: number): Sliced<Bits> {
  const { width, height } = ink;
  const out = bitsOf(width, height);
  const inkIn = inkPixels(ink);
  let [start, end] = [0, 0];
  const close = () => {
    if (end - start >= least) out.data.fill(1, start, end);
  };
  const add = (at: number) => {
    if (at !== end) {
      close();
      start = at;
    }
    end = at + 1;
  };
  yield* inBands(ink, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      inkIn(y * width, (y + 1) * width, add);
      close();
      start = end = 0;
    }
  });
  return out;
}

/** ... and down the columns: row by row all the same, all columns at once. */
function* uprightRuns(ink: Bits, least: number): Sliced<Bits> {
  const { width, height } = ink;
  const out = bitsOf(width, height);
  const inkIn = inkPixels(ink);
  /** Of each column the rows where its last run begins, and has ended. */
  const starts = new Int32Array(width);
  const ends = new Int32Array(width);
  let row = 0;
  const close = (x: number) => {
    const [from, to] = [starts[x] as number, ends[x] as number];
    if (to - from >= least) for (let y = from; y < to; y++) out.data[y * width + x] = 1;
  };
  const add = (at: number) => {
    const x = at - row * width;
    if (ends[x] !== row) {
      close(x);
      starts[x] = row;
    }
    ends[x] = row + 1;
  };
  yield* inBands(ink, (top, bottom) => {
    for (row = top; row < bottom; row++) inkIn(row * width, (row + 1) * width, add);
  });
  for (let x = 0; x < width; x++) close(x);
  return out;
}

type Way = "level" | "upright";

/** Steps through the pixels along a line and across it. */
const stepsOf = ({ width, height }: Bits, way: Way) =>
  way === "level"
    ? { count: height, length: width, along: 1, across: width }
    : { count: width, length: height, along: width, across: 1 };

/** Pixels at which lines are crossed in a slice. */
const SLICE = 20_000;

/** Goes across every line, place by place: ragged edges go with it, strokes through it come back. */
function* mend(left: Bits, lines: Bits, own: Bits, way: Way, ragged: number): Sliced<void> {
  const { count, length, along, across } = stepsOf(left, way);
  const inkFrom = (at: number, row: number, step: 1 | -1): number => {
    let reach = 0;
    for (let r = row + step; r >= 0 && r < count && left.data[at + r * across]; r += step) reach++;
    return reach;
  };
  const tops = yield* asPart(topsOf(own, way), 0, 0.5);
  for (let top = 0; top < tops.length; top++) {
    if (top % SLICE === SLICE - 1) yield 0.5 + (0.5 * top) / tops.length;
    const place = tops[top] as number;
    const n = way === "level" ? place % own.width : Math.floor(place / own.width);
    const at = n * along;
    const first = (place - at) / across;
    let row = first;
    while (row + 1 < count && own.data[at + (row + 1) * across]) row++;
    const above = inkFrom(at, first, -1);
    const below = inkFrom(at, row, 1);
    if (above > 0 && above <= ragged)
      fill(left, lines, at, first - above, first - 1, across, false);
    if (below > 0 && below <= ragged) fill(left, lines, at, row + 1, row + below, across, false);
    if (above <= ragged && below <= ragged) continue;
    if (!goesThrough(left, at, first, row, across, along, n, length, above > ragged)) continue;
    fill(left, lines, at, first, row, across, true);
  }
}

/**
 * Where lines begin, seen across them: of level ones the upper edge, from the left column to the right;
 * of upright ones the left edge, from the upper row down.
 */
function* topsOf(own: Bits, way: Way): Sliced<Int32Array> {
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

/** Whether ink stands right across a line from where it stands here, or a little aside for a slanting stroke. */
function goesThrough(
  left: Bits,
  at: number,
  top: number,
  bottom: number,
  across: number,
  along: number,
  n: number,
  length: number,
  isAbove: boolean,
): boolean {
  const aside = Math.ceil((bottom - top + 1) / 2);
  const row = isAbove ? bottom + 1 : top - 1;
  for (let by = -aside; by <= aside; by++) {
    if (n + by < 0 || n + by >= length) continue;
    if (left.data[at + by * along + row * across] === 1) return true;
  }
  return false;
}

function fill(
  left: Bits,
  lines: Bits,
  at: number,
  from: number,
  to: number,
  across: number,
  isInk: boolean,
): void {
  for (let row = from; row <= to; row++) {
    left.data[at + row * across] = isInk ? 1 : 0;
    lines.data[at + row * across] = isInk ? 0 : 1;
  }
}
