import { IntList } from "./int-list.ts";
import { type Bits, bitsOf, type Grey } from "./raster.ts";
import { asPart, finished, inBands, type Sliced } from "./sliced.ts";
import { histogram, otsu } from "./threshold.ts";

/** Ink surely is at least this share of the darkness of full ink ... */
const SURE = 0.5;
/** ... and what hangs on such ink may be fainter: a line that a copier half lost. */
const FAINT = 0.3;
/** Darkness, 0 to 255, below which nothing is ink: paper grain. */
const LEAST = 24;

/** As `inking`, in one go. */
export const inkOf = (flat: Grey): Bits => finished(inking(flat));

/** Pixels looked round from in a slice. */
const SLICE = 100_000;

/**
 * Ink on flattened paper. A pixel is ink where it is dark, or half dark and touching such a one: a
 * threshold with two levels keeps faint stretches of a line without taking the paper's grain for ink.
 */
export function* inking(flat: Grey): Sliced<Bits> {
  const { width, height, data } = flat;
  const counts = yield* asPart(histogram(flat), 0, 0.3);
  const full = fullDarkness(counts);
  const sure = 255 - Math.max(LEAST, SURE * full);
  const faint = Math.max(sure, 255 - Math.max(LEAST, FAINT * full, grainDarkness(counts)));
  const bits = bitsOf(width, height);
  const ink = bits.data;
  const edge = new IntList();
  const add = (at: number) => {
    ink[at] = 1;
    const x = at % width;
    if (x > 0 && x < width - 1 && at >= width && at < data.length - width) edge.push(at);
  };
  yield* asPart(
    inBands(flat, (top, bottom) => {
      for (let at = top * width, end = bottom * width; at < end; at++) {
        if ((data[at] as number) <= sure) add(at);
      }
    }),
    0.3,
    0.6,
  );
  const around = [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1];
  for (let done = 1; edge.length > 0; done++) {
    if (done % SLICE === 0) yield 0.6 + (0.4 * done) / (done + edge.length);
    const from = edge.pop();
    for (let n = 0; n < 8; n++) {
      const at = from + (around[n] as number);
      if (!ink[at] && (data[at] as number) <= faint) add(at);
    }
  }
  return bits;
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
