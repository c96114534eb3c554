import { inkPixels } from "../ink-pixels.ts";
import { type Bits, bitsOf } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";
import { type Along, alongOf, type LineWay, lineBandsOf } from "./line-bands.ts";
import { type Stroke, strokesAt } from "./line-strokes.ts";
import { type Patch, patchesBetween } from "./mended-strokes.ts";
import { areOnePiece } from "./one-piece.ts";

/** A straight run this many line widths long is a line: no letter on a drawing has one. */
const LONG = 15;
/** What sticks out of a line by no more than this share of its width is its ragged edge. */
const RAGGED = 0.5;
/** Places along lines looked at in a slice. */
const SLICE = 20_000;

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
 * Takes level and upright lines out of the ink. What a line hid of letters, by the strokes that come up to it,
 * is given back.
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

/** Goes along every line: its ragged edges go with it, what it hid of strokes through it comes back. */
function* mend(left: Bits, lines: Bits, own: Bits, way: LineWay, ragged: number): Sliced<void> {
  const at = alongOf(left, way);
  const bands = yield* asPart(lineBandsOf(own, way), 0, 0.6);
  const set = (place: number, row: number, isInk: boolean) => {
    const pixel = place * at.along + row * at.across;
    left.data[pixel] = isInk ? 1 : 0;
    lines.data[pixel] = isInk ? 0 : 1;
  };
  const areOne = (one: Stroke, other: Stroke) => areOnePiece(left, at, one, other);
  let places = 0;
  for (const [n, band] of bands.entries()) {
    places += band.firsts.length;
    if (places > SLICE) {
      yield 0.6 + (0.4 * n) / bands.length;
      places = 0;
    }
    const strokes = strokesAt(left, at, band, ragged, (place, from, to) => {
      for (let row = from; row <= to; row++) set(place, row, false);
    });
    for (const patch of patchesBetween(strokes, areOne)) {
      cover(patch, at, (place, row) => set(place, row, true));
    }
  }
}

/** Names every place of a patch that lies on the page. */
function cover(
  { rows: [first, last], at: [begins, ends] }: Patch,
  { length, count }: Along,
  name: (place: number, row: number) => void,
): void {
  for (let row = Math.max(0, first + 1); row < Math.min(count, last); row++) {
    const share = (row - first) / (last - first);
    const [from, to] = ([0, 1] as const).map((side) =>
      Math.round(begins[side] * (1 - share) + ends[side] * share),
    ) as [number, number];
    for (let place = Math.max(0, from); place <= Math.min(length - 1, to); place++)
      name(place, row);
  }
}
