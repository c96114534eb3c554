import { lowestBit, type PackedBits } from "../packed-bits.ts";
import type { Grey } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";

/** How dark ink and paper are on a flattened page, 0 to 255. */
export interface Tones {
  /** The middle of the usual line. */
  readonly full: number;
  /** Bare paper: its grain. */
  readonly bare: number;
}

/**
 * `counts` has how many pixels of the page have each brightness, `places` are those of thinned lines.
 * Both tones are middle values, which words, dots and shadows hardly move.
 */
export function* tonesOf(
  { data }: Grey,
  counts: Uint32Array,
  ink: PackedBits,
  places: Int32Array,
): Sliced<Tones> {
  const lines = new Uint32Array(256);
  // What is no ink is paper.
  const paper = counts.slice().reverse();
  const { width, across, words } = ink;
  yield* inBands(ink, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      for (let column = 0; column < across; column++) {
        let word = words[y * across + column] as number;
        const start = y * width + (column << 5);
        for (; word !== 0; word &= word - 1) {
          const dark = 255 - (data[start + lowestBit(word)] as number);
          paper[dark] = (paper[dark] as number) - 1;
        }
      }
    }
  });
  for (let n = 0; n < places.length; n++) {
    const dark = 255 - (data[places[n] as number] as number);
    lines[dark] = (lines[dark] as number) + 1;
  }
  const bare = middleOf(paper) ?? 0;
  return { full: Math.max(bare + 1, middleOf(lines) ?? 255), bare };
}

function middleOf(counts: Uint32Array): number | null {
  const all = counts.reduce((sum, count) => sum + count, 0);
  let seen = 0;
  for (let value = 0; value < counts.length; value++) {
    seen += counts[value] as number;
    if (all > 0 && 2 * seen >= all) return value;
  }
  return null;
}

/** Lines wider than this, in pixels, are measured only so far. */
const WIDEST = 24;
/** Ink fainter than this share of full ink ends a line's profile: grain, or the line's blur. */
const EDGE = 0.08;
/** Pixels of line that are measured at most: more would change nothing. */
const SAMPLES = 20_000;

export interface UsualLine {
  /** Width in pixels, measured in ink, so that blur and grey edges count for what they are. */
  readonly lineWidth: number;
  /** How far, in pixels, ink as a mask sticks out of either side of such a line. */
  readonly spread: number;
}

/** Samples a slice. */
const SLICE = 4_000;

/** `thinned` are the places of thinned lines. */
export function* usualLine(
  page: Tones & { readonly flat: Grey },
  ink: PackedBits,
  thinned: Int32Array,
): Sliced<UsualLine> {
  const lineWidth = yield* asPart(usualWidth(page, thinned), 0, 0.7);
  const samples = samplesOf(page.flat, thinned);
  if (samples.length === 0) return { lineWidth, spread: 0 };
  const runs = yield* asPart(runsAcross(ink, samples), 0.7, 1);
  const usualRun = median(runs);
  const near = runs.filter((run) => Math.abs(run - usualRun) <= 1);
  const mean = near.reduce((sum, run) => sum + run, 0) / near.length;
  return { lineWidth, spread: Math.max(0, (mean - lineWidth) / 2) };
}

/**
 * As `usualLine` measures its width: at many places of thinned lines the lesser of the ink beside it and
 * above and below it; the middle one of all.
 */
export function* usualWidth(
  { flat, full, bare }: Tones & { readonly flat: Grey },
  thinned: Int32Array,
): Sliced<number> {
  const { width, data } = flat;
  /** How much ink a pixel is, by its brightness. */
  const shares = Float64Array.from({ length: 256 }, (_, light) =>
    Math.min(1, Math.max(0, (255 - light - bare) / (full - bare))),
  );
  /** The ink from a place on, `known` added; no more is looked at once that is `enough`. */
  const inkAlong = (at: number, step: number, known: number, enough: number) => {
    let sum = 0;
    for (let n = 1, on = at + step; n < WIDEST && known + sum < enough; n++, on += step) {
      const there = shares[data[on] as number] as number;
      if (there < EDGE) break;
      sum += there;
    }
    return known + sum;
  };
  const samples = samplesOf(flat, thinned);
  if (samples.length === 0) return 1;
  const widths = new Float64Array(samples.length);
  for (let n = 0; n < samples.length; n++) {
    if (n % SLICE === SLICE - 1) yield n / samples.length;
    const at = samples[n] as number;
    // Above and below are other rows, far off in memory: no more of them than may be the lesser.
    const aside = inkAlong(at, -1, inkAlong(at, 1, 0, Infinity), Infinity);
    const upright = inkAlong(at, -width, inkAlong(at, width, 0, aside), aside);
    widths[n] = (shares[data[at] as number] as number) + Math.min(aside, upright);
  }
  return Math.max(1, median(widths));
}

/** Of each place the lesser of how many pixels of ink are side by side and above one another there. */
function* runsAcross(ink: PackedBits, samples: Int32Array): Sliced<Float64Array> {
  const { width, words, across } = ink;
  /** Pixels of ink from a place on, `known` added; no more is looked at once that is `enough`. */
  const runAlong = (
    from: number,
    x: number,
    [aside, down]: readonly [number, number],
    known: number,
    enough: number,
  ) => {
    let run = 0;
    for (let row = from, on = x; known + run < enough; run++) {
      on += aside;
      row += down;
      if (run === WIDEST - 1 || !(((words[row + (on >> 5)] as number) >>> (on & 31)) & 1)) break;
    }
    return known + run;
  };
  const runs = new Float64Array(samples.length);
  for (let n = 0; n < samples.length; n++) {
    if (n % SLICE === SLICE - 1) yield n / samples.length;
    const at = samples[n] as number;
    const x = at % width;
    const row = ((at - x) / width) * across;
    const beside = runAlong(row, x, [-1, 0], runAlong(row, x, [1, 0], 0, Infinity), Infinity);
    const below = runAlong(row, x, [0, across], 0, beside);
    runs[n] = 1 + Math.min(beside, runAlong(row, x, [0, -across], below, beside));
  }
  return runs;
}

/** Many of the places of lines, those near the picture's own edge left out. */
function samplesOf({ width, height }: Grey, thinned: Int32Array): Int32Array {
  const stride = Math.max(1, Math.floor(thinned.length / SAMPLES));
  const samples = new Int32Array(Math.ceil(thinned.length / stride));
  let count = 0;
  for (let n = 0; n < thinned.length; n += stride) {
    const at = thinned[n] as number;
    const x = at % width;
    const y = (at - x) / width;
    if (x < WIDEST || x >= width - WIDEST || y < WIDEST || y >= height - WIDEST) continue;
    samples[count++] = at;
  }
  return samples.subarray(0, count);
}

const median = (values: Float64Array): number =>
  values.slice().sort()[Math.floor(values.length / 2)] as number;
