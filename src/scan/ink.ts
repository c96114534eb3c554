import { IntList } from "./int-list.ts";
import {
  fourOf,
  isInk,
  type PackedBits,
  packedBitsOf,
  put,
  putFour,
  take,
  unpacked,
  wordsOf,
} from "./packed-bits.ts";
import type { Bits, Grey } from "./raster.ts";
import { asPart, inBands, type Sliced } from "./sliced.ts";
import { histogram, otsu } from "./threshold.ts";

/** Ink surely is at least this share of the darkness of full ink ... */
const SURE = 0.5;
/** ... and what hangs on such ink may be fainter: a line that a copier half lost. */
const FAINT = 0.3;
/** Darkness, 0 to 255, below which nothing is ink: paper grain. */
const LEAST = 24;

/** Words of 32 pixels looked at in a slice. */
const SLICE = 20_000;

/** Ink as a picture, and the same packed. */
export interface Ink {
  readonly bits: Bits;
  readonly packed: PackedBits;
}

/** As `inkOn`, unpacked. */
export function* inking(flat: Grey, known: Uint32Array | null = null): Sliced<Bits> {
  const { bits } = yield* inkOn(flat, known);
  return bits;
}

/**
 * Ink on flattened paper. A pixel is ink where it is dark, or half dark and touching such a one: a
 * threshold with two levels keeps faint stretches of a line without taking the paper's grain for ink.
 * `known`: how many pixels have each brightness, where that was counted already.
 */
export function* inkOn(flat: Grey, known: Uint32Array | null = null): Sliced<Ink> {
  const { width, height, data } = flat;
  const counts = known ?? (yield* asPart(histogram(flat), 0, 0.3));
  const full = fullDarkness(counts);
  const sure = Math.floor(255 - Math.max(LEAST, SURE * full));
  const darkness = Math.max(LEAST, FAINT * full, grainDarkness(counts));
  const faint = Math.max(sure, Math.floor(255 - darkness));
  const packed = packedBitsOf(width, height);
  const maybe = packedBitsOf(width, height);
  const darkIn = darkPixels(flat, sure, faint, packed.words, maybe.words);
  yield* asPart(inBands(flat, darkIn), 0.3, 0.6);
  // What lies on the picture's own edge is ink where it hangs on other ink, and none hangs on it.
  for (const at of edgePlaces(flat)) take(packed, at);
  yield* asPart(joinFaint(packed, maybe.words), 0.6, 0.8);
  const edgeInk = edgePlaces(flat).filter((at) => {
    const dark = data[at] as number;
    return dark <= sure || (dark <= faint && hangsOnInk(packed, at));
  });
  for (const at of edgeInk) put(packed, at);
  const bits = yield* asPart(unpacked(packed), 0.8, 1);
  return { bits, packed };
}

/**
 * Finds pixels no brighter than each of two levels of 127 at least, the second not below the first, four
 * at a time: most of a page is brighter. A byte of darkness above 255 less the level carries into its
 * highest bit. Those of the second level are set that are not of the first.
 */
function darkPixels(
  { width, data }: Grey,
  sure: number,
  faint: number,
  ink: Int32Array,
  maybe: Int32Array,
) {
  const across = (width + 31) >>> 5;
  const bytes = wordsOf(data);
  const carryFaint = Math.imul(0x01010101, faint - 127);
  const carrySure = Math.imul(0x01010101, sure - 127);
  const single = (row: number, x: number, light: number) => {
    if (light <= faint) putFour(light <= sure ? ink : maybe, row, x, 1);
  };
  return (top: number, bottom: number) => {
    for (let y = top; y < bottom; y++) {
      const [row, start, end] = [y * across, y * width, (y + 1) * width];
      let at = start;
      for (; at < end && at & 3; at++) single(row, at - start, data[at] as number);
      for (; at + 4 <= end; at += 4) {
        const dark = ~(bytes[at >> 2] as number);
        const low = dark & 0x7f7f7f7f;
        const isFaint = ((low + carryFaint) | dark) & 0x80808080;
        if (isFaint === 0) continue;
        const isSure = ((low + carrySure) | dark) & 0x80808080;
        const [all, some] = [fourOf(isFaint >>> 7), fourOf(isSure >>> 7)];
        if (some !== 0) putFour(ink, row, at - start, some);
        if (some !== all) putFour(maybe, row, at - start, all & ~some);
      }
      for (; at < end; at++) single(row, at - start, data[at] as number);
    }
  };
}

/** Makes ink of what may be and hangs on ink, be it over others. Nothing is ink on the picture's own edge. */
function* joinFaint(
  { width, height, across, words: ink }: PackedBits,
  maybe: Int32Array,
): Sliced<void> {
  const lastBit = 1 << ((width - 1) & 31);
  const isPut = new Uint8Array(maybe.length);
  const [first, last] = [across, across * (height - 1)];
  /** Words beside which there is new ink. */
  const again = new IntList();
  const look = (at: number) => {
    const column = at % across;
    let left = maybe[at] as number;
    if (column === 0) left &= ~1;
    if (column === across - 1) left &= ~lastBit;
    if (left === 0) return;
    const here = around(at);
    const before = column === 0 ? 0 : around(at - 1);
    const after = column === across - 1 ? 0 : around(at + 1);
    let grown = left & (here | (here << 1) | (here >>> 1) | (before >>> 31) | (after << 31));
    if (grown === 0) return;
    for (let more = grown; more !== 0; grown |= more) {
      left &= ~more;
      more = left & ((grown << 1) | (grown >>> 1));
    }
    maybe[at] = (maybe[at] as number) & ~grown;
    ink[at] = (ink[at] as number) | grown;
    for (let row = at - across; row <= at + across; row += across) {
      for (let beside = row - 1; beside <= row + 1; beside++) {
        if (beside < first || beside >= last || maybe[beside] === 0 || isPut[beside] === 1)
          continue;
        isPut[beside] = 1;
        again.push(beside);
      }
    }
  };
  /** The ink of a word and of those above and below it. */
  const around = (at: number) =>
    (ink[at - across] as number) | (ink[at] as number) | (ink[at + across] as number);
  for (let from = first; from < last; from += SLICE) {
    yield (0.8 * from) / last;
    const to = Math.min(last, from + SLICE);
    for (let at = from; at < to; at++) if (maybe[at] !== 0) look(at);
  }
  for (let done = 1; again.length > 0; done++) {
    if (done % SLICE === 0) yield 0.8 + (0.2 * done) / (done + again.length);
    const at = again.pop();
    isPut[at] = 0;
    look(at);
  }
}

/** Whether ink is beside a place. */
function hangsOnInk(ink: PackedBits, at: number): boolean {
  const { width, height } = ink;
  const [x, y] = [at % width, Math.floor(at / width)];
  for (let row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++) {
    for (let column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column++) {
      if (isInk(ink, column, row)) return true;
    }
  }
  return false;
}

/** The places on a picture's own edge. */
function edgePlaces({ width, height }: Grey): number[] {
  const places: number[] = [];
  for (let x = 0; x < width; x++) places.push(x, x + width * (height - 1));
  for (let y = 0; y < height; y++) places.push(y * width, y * width + width - 1);
  return places;
}

/** As dark as the paper's grain hardly ever is: three deviations from its middle, 0 to 255. */
function grainDarkness(counts: Uint32Array): number {
  const level = otsu(counts);
  let all = 0;
  for (let value = level + 1; value < 256; value++) all += counts[value] as number;
  const darker = (share: number) => {
    let seen = 0;
    for (let value = 255; value > level; value--) {
      seen += counts[value] as number;
      if (seen >= share * all) return 255 - value;
    }
    return 0;
  };
  // A tenth of what varies by chance is 1.28 deviations beyond its middle.
  const middle = darker(0.5);
  return middle + (3 / 1.28) * (darker(0.9) - middle);
}

/** How dark ink is on this page, 0 to 255: the mean of what Otsu's level parts from the paper. */
function fullDarkness(counts: Uint32Array): number {
  const level = otsu(counts);
  let [sum, count] = [0, 0];
  for (let value = 0; value <= level; value++) {
    sum += (255 - value) * (counts[value] as number);
    count += counts[value] as number;
  }
  return count === 0 ? 255 : sum / count;
}
