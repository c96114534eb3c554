import { Groups } from "../base/index.ts";
import { inkPixels } from "./ink-pixels.ts";
import { IntList } from "./int-list.ts";
import type { Bits } from "./raster.ts";
import { asPart, finished, inBands, type Sliced } from "./sliced.ts";

/** One piece of ink whose pixels touch, corners too. Right and bottom are inside. */
export interface Component {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** Pixels of ink. */
  readonly area: number;
}

export interface Components {
  /** Of each pixel the number of its component in `list` plus one; 0 on paper. */
  readonly labels: Int32Array;
  readonly list: readonly Component[];
}

/** As `components`, in one go. */
export const componentsOf = (ink: Bits): Components => finished(components(ink));

/**
 * Pieces of ink, in the order in which a reader meets their first pixel. Runs of ink along the rows that
 * touch those above are one (Rosenfeld and Pfaltz 1966).
 */
export function* components(ink: Bits): Sliced<Components> {
  const runs = yield* asPart(runsOf(ink), 0, 0.4);
  const together = yield* asPart(touching(ink, runs), 0.4, 0.6);
  return yield* asPart(numbered(ink, runs, together), 0.6, 1);
}

/** Runs of ink in order, as places: where each begins, and where it has ended. */
interface Runs {
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** Of each row the number of its first run, and at last how many there are. */
  readonly rows: Int32Array;
}

function* runsOf(ink: Bits): Sliced<Runs> {
  const { width, height } = ink;
  const [starts, ends] = [new IntList(), new IntList()];
  const rows = new Int32Array(height + 1);
  const inkIn = inkPixels(ink);
  let end = -1;
  const add = (at: number) => {
    if (at === end) {
      ends.pop();
    } else starts.push(at);
    end = at + 1;
    ends.push(end);
  };
  yield* inBands(ink, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      end = -1;
      inkIn(y * width, (y + 1) * width, add);
      rows[y + 1] = starts.length;
    }
  });
  return { starts: starts.values(), ends: ends.values(), rows };
}

/** Which runs touch one another, be it over others. */
function* touching(ink: Bits, { starts, ends, rows }: Runs): Sliced<Groups> {
  const { width } = ink;
  const together = new Groups(starts.length);
  yield* inBands(ink, (top, bottom) => {
    for (let y = Math.max(1, top); y < bottom; y++) {
      let above = rows[y - 1] as number;
      let here = rows[y] as number;
      const [lastAbove, last] = [here, rows[y + 1] as number];
      while (above < lastAbove && here < last) {
        const aboveEnd = (ends[above] as number) + width;
        const end = ends[here] as number;
        if ((starts[above] as number) + width <= end && (starts[here] as number) <= aboveEnd)
          together.join(here, above);
        if (aboveEnd < end) above++;
        else here++;
      }
    }
  });
  return together;
}

/** Counts through the pieces, and measures each. */
function* numbered(ink: Bits, { starts, ends, rows }: Runs, together: Groups): Sliced<Components> {
  const { width } = ink;
  const labels = new Int32Array(ink.data.length);
  const number = new Int32Array(starts.length);
  const list: { left: number; top: number; right: number; bottom: number; area: number }[] = [];
  const put = (run: number, y: number) => {
    const [start, end] = [starts[run] as number, ends[run] as number];
    const [left, right] = [start - y * width, end - 1 - y * width];
    const root = together.of(run);
    let known = number[root] as number;
    if (known === 0) {
      list.push({ left, top: y, right, bottom: y, area: 0 });
      known = list.length;
      number[root] = known;
    }
    for (let at = start; at < end; at++) labels[at] = known;
    const piece = list[known - 1];
    if (!piece) return;
    piece.area += end - start;
    if (left < piece.left) piece.left = left;
    if (right > piece.right) piece.right = right;
    piece.bottom = y;
  };
  yield* inBands(ink, (top, bottom) => {
    for (let y = top; y < bottom; y++)
      for (let run = rows[y] as number; run < (rows[y + 1] as number); run++) put(run, y);
  });
  return { labels, list };
}
