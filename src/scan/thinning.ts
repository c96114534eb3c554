import { inkPixels } from "./ink-pixels.ts";
import { IntList } from "./int-list.ts";
import type { Bits } from "./raster.ts";
import { asPart, finished, inBands, type Sliced } from "./sliced.ts";

/** As `thinning`, in one go. */
export const thin = (bits: Bits): Bits => finished(thinning(bits));

/** Pixels looked at in a slice. */
const SLICE = 100_000;

/**
 * Ink as a number: what may go, what stays because it lies on the picture's own edge, and what was seen
 * while neighbours are gathered. The lowest bit says that it is ink at all.
 */
const INK = 1;
const KEPT = 3;
const SEEN = 5;

/**
 * Thins ink to lines one pixel wide that join as the ink did.
 *
 * Zhang and Suen, "A fast parallel algorithm for thinning digital patterns", CACM 27(3), 1984,
 * pp. 236-239. As there, pixels on the picture's own edge are never removed. Two passes take turns,
 * each deciding on all its pixels before it removes any. A pixel is looked at again only where
 * something beside it went since that pass last saw it: the result is the same, and the time follows
 * the ink and not the page times its thickest spot.
 */
export function* thinning({ width, height, data }: Bits): Sliced<Bits> {
  const bits = { width, height, data: data.slice() };
  markEdge(bits, KEPT);
  const [candidates, removed] = [new IntList(), new IntList()];
  /** Ink beside what one pass removed, and beside what the pass before that did. */
  let [near, nearBefore] = [new IntList(), new IntList()];
  yield* asPart(outlineOf(bits, candidates), 0, 0.2);
  // The second pass has seen nothing yet when it is run first: it too begins with the outline.
  addAll(candidates, nearBefore);
  let lastCount = 0;
  for (let pass = 0; ; pass++) {
    const [from, to] = [1 - 0.8 / (pass + 1), 1 - 0.8 / (pass + 2)];
    const table = pass % 2 === 0 ? FIRST : SECOND;
    removed.clear();
    yield* asPart(removePass(bits, candidates, table, removed), from, to);
    if (pass > 0 && removed.length === 0 && lastCount === 0) break;
    lastCount = removed.length;
    near.clear();
    yield* asPart(beside(bits, removed, near), to, to);
    candidates.clear();
    addInk(bits, nearBefore, candidates);
    for (let n = 0; n < near.length; n++) bits.data[near.at(n)] = INK;
    addAll(near, candidates);
    [near, nearBefore] = [nearBefore, near];
  }
  markEdge(bits, INK);
  return bits;
}

/** Of the picture's own edge all ink as this number. */
function markEdge({ width, height, data }: Bits, as: number): void {
  const mark = (at: number) => {
    if (data[at]) data[at] = as;
  };
  for (let x = 0; x < width; x++) {
    mark(x);
    mark(x + width * (height - 1));
  }
  for (let y = 0; y < height; y++) {
    mark(y * width);
    mark(y * width + width - 1);
  }
}

/** Whether a pixel goes, by its eight neighbours as bits: P2 to P9 of the paper, clockwise from above. */
function removable(isFirst: boolean): Uint8Array {
  return Uint8Array.from({ length: 256 }, (_, code) => {
    const p = (k: number) => (code >> (k - 2)) & 1;
    let count = 0;
    let rises = 0;
    for (let k = 2; k <= 9; k++) {
      count += p(k);
      if (p(k) === 0 && p(k === 9 ? 2 : k + 1) === 1) rises++;
    }
    const opens = isFirst
      ? p(2) * p(4) * p(6) === 0 && p(4) * p(6) * p(8) === 0
      : p(2) * p(4) * p(8) === 0 && p(2) * p(6) * p(8) === 0;
    return count >= 2 && count <= 6 && rises === 1 && opens ? 1 : 0;
  });
}

const FIRST = removable(true);
const SECOND = removable(false);

/** Ink with paper beside it, the picture's own edge left out. */
function* outlineOf(bits: Bits, found: IntList): Sliced<void> {
  const { width, data } = bits;
  const inkIn = inkPixels(bits);
  const look = (at: number) => {
    if (data[at] !== INK) return;
    if (!(data[at - 1] && data[at + 1] && data[at - width] && data[at + width])) found.push(at);
  };
  yield* inBands(bits, (top, bottom) => inkIn(top * width, bottom * width, look));
}

function* removePass(
  { width, data: ink }: Bits,
  candidates: IntList,
  table: Uint8Array,
  removed: IntList,
): Sliced<void> {
  const count = candidates.length;
  for (let n = 0; n < count; n++) {
    if (n % SLICE === SLICE - 1) yield n / count;
    const at = candidates.at(n);
    const [above, below] = [at - width, at + width];
    const code =
      ((ink[above] as number) & 1) |
      (((ink[above + 1] as number) & 1) << 1) |
      (((ink[at + 1] as number) & 1) << 2) |
      (((ink[below + 1] as number) & 1) << 3) |
      (((ink[below] as number) & 1) << 4) |
      (((ink[below - 1] as number) & 1) << 5) |
      (((ink[at - 1] as number) & 1) << 6) |
      (((ink[above - 1] as number) & 1) << 7);
    if (table[code]) removed.push(at);
  }
  for (let n = 0; n < removed.length; n++) ink[removed.at(n)] = 0;
}

/** Adds ink beside pixels that went, each once and marked as seen; never the picture's own edge. */
function* beside({ width, data: ink }: Bits, gone: IntList, found: IntList): Sliced<void> {
  const around = Int32Array.of(-width, 1 - width, 1, width + 1, width, width - 1, -1, -width - 1);
  for (let n = 0; n < gone.length; n++) {
    if (n % SLICE === SLICE - 1) yield n / gone.length;
    const from = gone.at(n);
    for (let k = 0; k < 8; k++) {
      const at = from + (around[k] as number);
      if (ink[at] !== INK) continue;
      ink[at] = SEEN;
      found.push(at);
    }
  }
}

/** Adds those pixels of a list that are ink, and not seen yet. */
function addInk({ data: ink }: Bits, list: IntList, to: IntList): void {
  for (let n = 0; n < list.length; n++) if (ink[list.at(n)] === INK) to.push(list.at(n));
}

function addAll(list: IntList, to: IntList): void {
  for (let n = 0; n < list.length; n++) to.push(list.at(n));
}
