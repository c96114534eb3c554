import type { Bits } from "../raster.ts";
import type { Along, LineBand } from "./line-bands.ts";

/** The two sides of a line, as steps across it. */
export const SIDES = [-1, 1] as const;
export type Side = (typeof SIDES)[number];

/** Ink that comes up to a line from one side. */
export interface Stroke {
  readonly side: Side;
  /** Places along the line, both inside, at which it stands right beside the line. */
  readonly from: number;
  readonly to: number;
  /** The row there, and how many rows on it would be beyond the line. */
  readonly row: number;
  readonly gap: number;
  /** How wide it is a little way off; of a bar along the line, its stem or its arms. */
  readonly wide: number;
  /** Places that it goes on by in a row, towards the line. */
  readonly slope: number;
  /** Whether it lies along the line, a letter's bar, rather than coming up to it. */
  readonly isBar: boolean;
}

export const middleOf = ({ from, to }: Stroke) => (from + to) / 2;

/** So far off the line it is seen how a stroke runs, pixels. */
const OFF = 3;
/** So many pixels beyond that the depth of ink beside a line is counted. */
const DEEPER = 3;
/**
 * What sticks out of a line no more than its ragged edge does is a letter's where it is longer than this,
 * pixels, and a letter's stroke is no farther off than so many times what sticks out at most; or where
 * such a stroke stands so nearly right across the line from it, pixels.
 */
const LEAST = 3;
const NEARBY = 3;
const ACROSS = 2;
/** Of a line's edge this share is no more ragged than the rest counts as. */
const USUAL = 0.8;

/**
 * What comes up to a line from both sides. What sticks out of it by no more than `ragged` rows and belongs
 * to nothing is its ragged edge, and is handed to `drop`, place by place.
 */
export function strokesAt(
  left: Bits,
  at: Along,
  band: LineBand,
  ragged: number,
  drop: (place: number, from: number, to: number) => void,
): readonly Stroke[] {
  const above = bankOf(left, at, band, -1, ragged);
  const below = bankOf(left, at, band, 1, ragged);
  const nearby = NEARBY * ragged;
  const strokes: Stroke[] = [];
  for (const [own, other] of [
    [above, below],
    [below, above],
  ] as const) {
    const isDeepNear = (bank: Bank, { from, to }: Run, aside: number) =>
      bank.runs.some(
        (one) => one.deepest > ragged && one.from <= to + aside && one.to >= from - aside,
      );
    const isKept = (run: Run) =>
      run.deepest > ragged ||
      isDeepNear(other, run, ACROSS) ||
      (run.to - run.from >= LEAST &&
        (isDeepNear(own, run, nearby) || isDeepNear(other, run, nearby)));
    let place = 0;
    const trim = (until: number) => {
      for (; place < until; place++) {
        const deep = own.depths[place] as number;
        if (deep === 0 || deep > ragged) continue;
        const edge = edgeOf(band, place, own.side);
        const end = edge + own.side * (deep - 1);
        drop(band.from + place, Math.min(edge, end), Math.max(edge, end));
      }
    };
    for (const run of own.runs) {
      if (!isKept(run)) continue;
      trim(run.from);
      place = run.to + 1;
      strokes.push(strokeOf(left, at, band, own, other.rag, run));
    }
    trim(band.firsts.length);
  }
  return strokes;
}

/** Places counted from the band's beginning. */
interface Run {
  readonly from: number;
  readonly to: number;
  readonly deepest: number;
}

interface Bank {
  readonly side: Side;
  readonly rag: number;
  /** At each place how many rows of ink stand beside the line, up to some. */
  readonly depths: Uint8Array;
  readonly runs: readonly Run[];
}

/** The row right beside the line. */
const edgeOf = ({ firsts, lasts }: LineBand, place: number, side: Side) =>
  side === -1 ? firsts.at(place) - 1 : lasts.at(place) + 1;

function bankOf(left: Bits, at: Along, band: LineBand, side: Side, ragged: number): Bank {
  const { count, along, across } = at;
  const depths = new Uint8Array(band.firsts.length);
  const most = ragged + OFF + DEEPER;
  const times = new Uint32Array(ragged + 1);
  for (let place = 0; place < depths.length; place++) {
    const edge = edgeOf(band, place, side);
    const pixel = (band.from + place) * along;
    let deep = 0;
    for (let row = edge; deep < most && row >= 0 && row < count; row += side, deep++) {
      if (!left.data[pixel + row * across]) break;
    }
    depths[place] = deep;
    if (deep <= ragged) times[deep] = (times[deep] as number) + 1;
  }
  const shallow = times.reduce((sum, one) => sum + one, 0);
  let rag = 0;
  for (let sum = times[0] as number; rag < ragged && sum < USUAL * shallow; ) {
    rag++;
    sum += times[rag] as number;
  }
  return { side, rag, depths, runs: runsOf(depths, rag, ragged) };
}

/**
 * A letter's bar that sticks out of a line is no longer than so many times what a ragged edge sticks out, and
 * some pixels. What sticks out by a single pixel is its edge, unless it lies between a letter's strokes.
 */
const LONGEST = [8, 4] as const;
const HAIR = [2, 4] as const;
/** ... where it may be a stem's edge. */
const BETWEEN = [20, 4] as const;

type Kind = "none" | "shallow" | "deep";

function runsOf(depths: Uint8Array, rag: number, ragged: number): Run[] {
  const kindAt = (place: number): Kind => {
    const deep = depths[place] ?? 0;
    return deep <= rag ? "none" : deep <= ragged ? "shallow" : "deep";
  };
  const runs: Run[] = [];
  let run: Run | null = null;
  for (let place = 0; place < depths.length; ) {
    const from = place;
    const kind = kindAt(from);
    let deepest = 0;
    for (; place < depths.length && kindAt(place) === kind; place++) {
      deepest = Math.max(deepest, depths[place] as number);
    }
    const isBetween = run !== null && kindAt(place) === "deep";
    const [times, more] = isBetween ? BETWEEN : deepest === 1 ? HAIR : LONGEST;
    if (kind === "none" || (kind === "shallow" && place - from > times * ragged + more)) {
      if (run) runs.push(run);
      run = null;
    } else {
      run = run
        ? { from: run.from, to: place - 1, deepest: Math.max(run.deepest, deepest) }
        : { from, to: place - 1, deepest };
    }
  }
  if (run) runs.push(run);
  return runs;
}

/** So much wider at the line than a little off it, and it is a bar. */
const BAR = 1.7;
const BAR_BY = 2;
/** ... or so many times as wide as it is deep, where it does not reach so far off. */
const SHALLOW = 1.5;

function strokeOf(
  left: Bits,
  { length, count, along, across }: Along,
  band: LineBand,
  { side, rag }: Bank,
  otherRag: number,
  run: Run,
): Stroke {
  const [from, to] = [band.from + run.from, band.from + run.to];
  const middle = (run.from + run.to) >> 1;
  const row = edgeOf(band, middle, side) + side * rag;
  const gap = band.lasts.at(middle) - band.firsts.at(middle) + 2 + rag + otherRag;
  const off = row + side * OFF;
  const isInk = (place: number) =>
    off >= 0 &&
    off < count &&
    place >= 0 &&
    place < length &&
    left.data[place * along + off * across] === 1;
  const branches: { from: number; to: number }[] = [];
  for (let place = from - OFF; place <= to + OFF; place++) {
    if (!isInk(place)) continue;
    const begin = place;
    while (isInk(place + 1)) place++;
    branches.push({ from: begin, to: place });
  }
  const [only, ...more] = branches;
  const wide = to - from + 1;
  if (!only || more.length > 0) {
    const isBar = more.length > 0 || wide > SHALLOW * run.deepest + 1;
    return { side, from, to, row, gap, wide, slope: 0, isBar };
  }
  const far = only.to - only.from + 1;
  const isBar = wide > BAR * far + BAR_BY;
  const slope = isBar ? 0 : ((from + to) / 2 - (only.from + only.to) / 2) / OFF;
  return { side, from, to, row, gap, wide: Math.min(far, wide), slope, isBar };
}
