import { inkPixels } from "../ink-pixels.ts";
import type { Bits, Grey } from "../raster.ts";
import { inBands, type Sliced } from "../sliced.ts";

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
  ink: Bits,
  places: Int32Array,
): Sliced<Tones> {
  const lines = new Uint32Array(256);
  // What is no ink is paper.
  const paper = counts.slice().reverse();
  const inkIn = inkPixels(ink);
  const takeOut = (at: number) => {
    const dark = 255 - (data[at] as number);
    paper[dark] = (paper[dark] as number) - 1;
  };
  yield* inBands(ink, (top, bottom) => inkIn(top * ink.width, bottom * ink.width, takeOut));
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

/**
 * `thinned` are the places of thinned lines. Of many of them the lesser of the ink beside it and above
 * and below it; the middle one of all.
 */
export function* usualLine(
  { flat, full, bare }: Tones & { readonly flat: Grey },
  ink: Bits,
  thinned: Int32Array,
): Sliced<UsualLine> {
  const { width, height, data } = flat;
  const share = (at: number) =>
    Math.min(1, Math.max(0, (255 - (data[at] as number) - bare) / (full - bare)));
  const inkAlong = (at: number, step: number) => {
    let sum = 0;
    for (let n = 1; n < WIDEST; n++) {
      const there = share(at + n * step);
      if (there < EDGE) break;
      sum += there;
    }
    return sum;
  };
  const runAlong = (at: number, step: number) => {
    let run = 1;
    while (run < WIDEST && ink.data[at + run * step]) run++;
    return run - 1;
  };
  const stride = Math.max(1, Math.floor(thinned.length / SAMPLES));
  const widths: number[] = [];
  const runs: number[] = [];
  for (let n = 0; n < thinned.length; n += stride) {
    const at = thinned[n] as number;
    const [x, y] = [at % width, Math.floor(at / width)];
    if (x < WIDEST || x >= width - WIDEST || y < WIDEST || y >= height - WIDEST) continue;
    const across = (of: (at: number, step: number) => number) =>
      Math.min(of(at, 1) + of(at, -1), of(at, width) + of(at, -width));
    widths.push(share(at) + across(inkAlong));
    runs.push(1 + across(runAlong));
    if (runs.length % SLICE === 0) yield n / thinned.length;
  }
  if (widths.length === 0) return { lineWidth: 1, spread: 0 };
  const lineWidth = Math.max(1, median(widths));
  const usualRun = median(runs);
  const near = runs.filter((run) => Math.abs(run - usualRun) <= 1);
  const mean = near.reduce((sum, run) => sum + run, 0) / near.length;
  return { lineWidth, spread: Math.max(0, (mean - lineWidth) / 2) };
}

const median = (values: readonly number[]): number =>
  Float64Array.from(values).sort()[Math.floor(values.length / 2)] as number;
