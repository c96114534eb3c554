import { IntList } from "./int-list.ts";
import type { Bits } from "./raster.ts";
import { asPart, finished, inBands, type Sliced } from "./sliced.ts";

/** As `thinning`, in one go. */
export const thin = (bits: Bits): Bits => finished(thinning(bits));

/** Pixels looked at in a slice. */
const SLICE = 200_000;

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
  const ink = data.slice();
  const bits = { width, height, data: ink };
  const candidates = new IntList();
  let [before, last, removed] = [new IntList(), new IntList(), new IntList()];
  // The second pass has seen nothing yet when it is run first: both begin with the ink's edge.
  yield* asPart(edgePixels(bits, candidates), 0, 0.3);
  yield* asPart(removePass(bits, candidates, FIRST, last), 0.3, 0.4);
  yield* asPart(edgePixels(bits, candidates), 0.4, 0.6);
  yield* asPart(removePass(bits, candidates, SECOND, removed), 0.6, 0.7);
  for (let pass = 2; removed.length > 0 || last.length > 0; pass++) {
    [before, last, removed] = [last, removed, before];
    removed.clear();
    const [from, to] = [1 - 0.6 / pass, 1 - 0.6 / (pass + 1)];
    yield* asPart(neighboursOf(bits, before, last, candidates), from, to);
    yield* asPart(removePass(bits, candidates, pass % 2 === 0 ? FIRST : SECOND, removed), to, to);
  }
  return bits;
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
function* edgePixels(bits: Bits, found: IntList): Sliced<void> {
  const { width, height, data } = bits;
  found.clear();
  yield* inBands(bits, (top, bottom) => {
    for (let y = Math.max(1, top); y < Math.min(height - 1, bottom); y++) {
      for (let at = y * width + 1, end = at + width - 2; at < end; at++) {
        if (data[at] && !(data[at - 1] && data[at + 1] && data[at - width] && data[at + width]))
          found.push(at);
      }
    }
  });
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
      (ink[above] as number) |
      ((ink[above + 1] as number) << 1) |
      ((ink[at + 1] as number) << 2) |
      ((ink[below + 1] as number) << 3) |
      ((ink[below] as number) << 4) |
      ((ink[below - 1] as number) << 5) |
      ((ink[at - 1] as number) << 6) |
      ((ink[above - 1] as number) << 7);
    if (table[code]) removed.push(at);
  }
  for (let n = 0; n < removed.length; n++) ink[removed.at(n)] = 0;
}

const SEEN = 2;

/** Ink beside what two passes removed, each pixel once, the picture's own edge left out. */
function* neighboursOf(
  { width, height, data: ink }: Bits,
  before: IntList,
  last: IntList,
  found: IntList,
): Sliced<void> {
  found.clear();
  const lowest = width * (height - 1);
  const look = (at: number) => {
    if (ink[at] !== 1 || at < width || at >= lowest) return;
    const x = at % width;
    if (x === 0 || x === width - 1) return;
    ink[at] = SEEN;
    found.push(at);
  };
  for (const list of [before, last]) {
    for (let n = 0; n < list.length; n++) {
      if (n % SLICE === SLICE - 1) yield n / list.length;
      const at = list.at(n);
      look(at - width);
      look(at - width + 1);
      look(at + 1);
      look(at + width + 1);
      look(at + width);
      look(at + width - 1);
      look(at - 1);
      look(at - width - 1);
    }
  }
  for (let n = 0; n < found.length; n++) ink[found.at(n)] = 1;
}
