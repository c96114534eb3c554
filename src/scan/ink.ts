import { IntList } from "./int-list.ts";
import { type Bits, bitsOf, type Grey } from "./raster.ts";
import { asPart, inBands, type Sliced } from "./sliced.ts";
import { histogram, otsu } from "./threshold.ts";

/** Ink surely is at least this share of the darkness of full ink ... */
const SURE = 0.5;
/** ... and what hangs on such ink may be fainter: a line that a copier half lost. */
const FAINT = 0.3;
/** Darkness, 0 to 255, below which nothing is ink: paper grain. */
const LEAST = 24;

/** Pixels looked round from in a slice. */
const SLICE = 100_000;

/**
 * Ink on flattened paper. A pixel is ink where it is dark, or half dark and touching such a one: a
 * threshold with two levels keeps faint stretches of a line without taking the paper's grain for ink.
 * `known`: how many pixels have each brightness, where that was counted already.
 */
export function* inking(flat: Grey, known: Uint32Array | null = null): Sliced<Bits> {
  const { width, height, data } = flat;
  const counts = known ?? (yield* asPart(histogram(flat), 0, 0.3));
  const full = fullDarkness(counts);
  const sure = 255 - Math.max(LEAST, SURE * full);
  const faint = Math.max(sure, 255 - Math.max(LEAST, FAINT * full, grainDarkness(counts)));
  const bits = bitsOf(width, height);
  const ink = bits.data;
  const darkIn = darkPixels(data, sure);
  const mark = (at: number) => {
    ink[at] = 1;
  };
  yield* asPart(
    inBands(flat, (top, bottom) => darkIn(top * width, bottom * width, mark)),
    0.3,
    0.6,
  );
  const around = Int32Array.of(-width - 1, -width, 1 - width, -1, 1, width - 1, width, width + 1);
  /** Ink that was found from other ink, and is not looked round yet. */
  const edge = new IntList();
  const lookRound = (from: number) => {
    for (let n = 0; n < 8; n++) {
      const at = from + (around[n] as number);
      if (ink[at] || (data[at] as number) > faint) continue;
      ink[at] = 1;
      const x = at % width;
      if (x > 0 && x < width - 1 && at >= width && at < data.length - width) edge.push(at);
    }
  };
  yield* asPart(
    inBands(flat, (top, bottom) => {
      for (let y = Math.max(1, top); y < Math.min(height - 1, bottom); y++)
        darkIn(y * width + 1, (y + 1) * width - 1, lookRound);
    }),
    0.6,
    0.8,
  );
  for (let done = 1; edge.length > 0; done++) {
    if (done % SLICE === 0) yield 0.8 + (0.2 * done) / (done + edge.length);
    lookRound(edge.pop());
  }
  return bits;
}

/**
 * Finds pixels no brighter than a level of 127 at least, four at a time: most of a page is brighter. A
 * byte of darkness above 255 less the level carries into its highest bit.
 */
function darkPixels(data: Uint8Array, level: number) {
  const bytes = data.byteOffset % 4 === 0 ? data : data.slice();
  const words = new Int32Array(bytes.buffer, bytes.byteOffset, bytes.length >> 2);
  const carry = Math.imul(0x01010101, 128 - (255 - Math.floor(level)));
  return (from: number, to: number, visit: (at: number) => void) => {
    let at = from;
    for (; at < to && at & 3; at++) if ((data[at] as number) <= level) visit(at);
    for (; at + 4 <= to; at += 4) {
      const dark = ~(words[at >> 2] as number);
      if ((((dark + carry) | dark) & 0x80808080) === 0) continue;
      if ((data[at] as number) <= level) visit(at);
      if ((data[at + 1] as number) <= level) visit(at + 1);
      if ((data[at + 2] as number) <= level) visit(at + 2);
      if ((data[at + 3] as number) <= level) visit(at + 3);
    }
    for (; at < to; at++) if ((data[at] as number) <= level) visit(at);
  };
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
