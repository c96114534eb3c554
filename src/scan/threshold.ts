import type { Grey } from "./raster.ts";
import { finished, inBands, type Sliced } from "./sliced.ts";

/** As `histogram`, in one go. */
export const histogramOf = (grey: Grey): Uint32Array => finished(histogram(grey));

/** How many pixels have each brightness. */
export function* histogram(grey: Grey): Sliced<Uint32Array> {
  const { width, data } = grey;
  const counts = new Uint32Array(256);
  yield* inBands(grey, (top, bottom) => {
    for (let at = top * width, end = bottom * width; at < end; at++) {
      const value = data[at] as number;
      counts[value] = (counts[value] as number) + 1;
    }
  });
  return counts;
}

/**
 * The brightness that parts the two heaps of a histogram best: up to it, the value itself too, is ink.
 * N. Otsu, "A threshold selection method from gray-level histograms", IEEE Trans. SMC-9(1), 1979.
 */
export function otsu(counts: Uint32Array): number {
  let all = 0;
  let sumAll = 0;
  for (let value = 0; value < 256; value++) {
    all += counts[value] as number;
    sumAll += value * (counts[value] as number);
  }
  let [best, level, below, sumBelow] = [-1, 127, 0, 0];
  for (let value = 0; value < 255; value++) {
    below += counts[value] as number;
    sumBelow += value * (counts[value] as number);
    if (below === 0 || below === all) continue;
    const between = (sumBelow * all - sumAll * below) ** 2 / (below * (all - below));
    if (between > best) [best, level] = [between, value];
  }
  return level;
}
