import { addTo, type Box, countLeading } from "../../base/index.ts";
import type { Sliced } from "../sliced.ts";

/** Reading along a row: `from` and `to` along it, `low` and `high` across it. */
export interface Extent {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
}

/** A box along and across a row, with the box's own edges. */
export const extentIn = ({ left, right, top, bottom }: Box, way: "level" | "upright"): Extent =>
  way === "level"
    ? { from: left, to: right, low: top, high: bottom }
    : { from: top, to: bottom, low: left, high: right };

/** Pairs looked at in a slice. */
const PAIRS = 200_000;

/** What stands in a row, and where. */
export interface Placed {
  readonly at: Extent;
}

/**
 * Calls `look` with the numbers of all that may be one row: `sorted` by where they begin, the one behind
 * the other beginning no more than `apart` after its end, their middles no more than `aside` from one
 * another across it.
 */
export function* neighbours(
  sorted: readonly Placed[],
  apart: number,
  aside: number,
  look: (n: number, m: number) => void,
): Sliced<void> {
  const bands = new Map<number, number[]>();
  const bandOf = ({ at }: Placed) => Math.floor((at.low + at.high) / 2 / Math.max(1, aside));
  for (const [n, one] of sorted.entries()) addTo(bands, bandOf(one), n);
  let looked = 0;
  for (const [n, one] of sorted.entries()) {
    const end = one.at.to + apart;
    const near: number[] = [];
    for (let band = bandOf(one) - 1; band <= bandOf(one) + 1; band++) {
      const numbers = bands.get(band) ?? [];
      for (let k = countLeading(numbers, (m) => m <= n); k < numbers.length; k++) {
        const m = numbers[k] as number;
        if ((sorted[m] as Placed).at.from > end) break;
        near.push(m);
      }
    }
    for (const m of near.sort((a, b) => a - b)) look(n, m);
    looked += near.length + 1;
    if (looked < PAIRS) continue;
    looked = 0;
    yield n / sorted.length;
  }
}
