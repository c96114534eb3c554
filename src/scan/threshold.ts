import type { Grey } from "./raster.ts";
import { inBands, type Sliced } from "./sliced.ts";

/** How many pixels have each brightness. */
export function* histogram(grey: Grey): Sliced<Uint32Array> {
  const { width, data } = grey;
  const counts = new Counts();
  yield* inBands(grey, (top, bottom) => counts.add(data, top * width, bottom * width));
  return counts.all();
}

/**
 * Counts of brightness. Neighbours are often as bright as one another, and to raise one number twice in
 * a row makes the second wait for the first: four tables take turns.
 */
export class Counts {
  private readonly tables = new Uint32Array(4 * 256);

  add(data: Uint8Array, from: number, to: number): void {
    const { tables } = this;
    let at = from;
    for (; at + 4 <= to; at += 4) {
      const a = data[at] as number;
      const b = 256 + (data[at + 1] as number);
      const c = 512 + (data[at + 2] as number);
      const d = 768 + (data[at + 3] as number);
      tables[a] = (tables[a] as number) + 1;
      tables[b] = (tables[b] as number) + 1;
      tables[c] = (tables[c] as number) + 1;
      tables[d] = (tables[d] as number) + 1;
    }
    for (; at < to; at++) {
      const value = data[at] as number;
      tables[value] = (tables[value] as number) + 1;
    }
  }

  of(value: number): number {
    const { tables } = this;
    return (
      (tables[value] as number) +
      (tables[256 + value] as number) +
      (tables[512 + value] as number) +
      (tables[768 + value] as number)
    );
  }

  /** By brightness, 0 to 255. */
  all(): Uint32Array {
    return Uint32Array.from({ length: 256 }, (_, value) => this.of(value));
  }

  /** The brightness that so large a share of all `count` pixels is no brighter than. */
  quantile(count: number, share: number): number {
    let [value, upTo] = [255, count];
    for (; value > 0; value--) {
      upTo -= this.of(value);
      if (upTo < share * count) break;
    }
    return value;
  }

  clear(): void {
    this.tables.fill(0);
  }
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
