import type { Bits } from "./raster.ts";

/**
 * Thins ink to lines one pixel wide that join as the ink did.
 *
 * Zhang and Suen, "A fast parallel algorithm for thinning digital patterns", CACM 27(3), 1984,
 * pp. 236-239. As there, pixels on the picture's own edge are never removed. Two passes take turns,
 * each deciding on all its pixels before it removes any. A pixel is looked at again only where
 * something beside it went since that pass last saw it: the result is the same, and the time follows
 * the ink and not the page times its thickest spot.
 */
export function thin({ width, height, data }: Bits): Bits {
  const ink = data.slice();
  const around = offsetsAround(width);
  let last = removePass(ink, around, edgePixels(ink, width, height), FIRST);
  let before: number[] | null = null;
  for (let pass = 1; ; pass++) {
    const table = pass % 2 === 0 ? FIRST : SECOND;
    // The second pass has seen nothing yet when it is run first.
    const candidates =
      before === null
        ? edgePixels(ink, width, height)
        : neighboursOf(ink, around, [before, last], width, height);
    const removed = removePass(ink, around, candidates, table);
    if (removed.length === 0 && last.length === 0) return { width, height, data: ink };
    before = last;
    last = removed;
  }
}

/** P2 to P9 of the paper: clockwise from the pixel above. */
const offsetsAround = (width: number): readonly number[] => [
  -width,
  -width + 1,
  1,
  width + 1,
  width,
  width - 1,
  -1,
  -width - 1,
];

/** Whether a pixel goes, by its eight neighbours as bits, P2 the lowest. */
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
function edgePixels(ink: Uint8Array, width: number, height: number): number[] {
  const found: number[] = [];
  for (let y = 1; y < height - 1; y++) {
    for (let at = y * width + 1, end = at + width - 2; at < end; at++) {
      if (ink[at] && !(ink[at - 1] && ink[at + 1] && ink[at - width] && ink[at + width])) {
        found.push(at);
      }
    }
  }
  return found;
}

function removePass(
  ink: Uint8Array,
  around: readonly number[],
  candidates: readonly number[],
  table: Uint8Array,
): number[] {
  const removed: number[] = [];
  for (const at of candidates) {
    let code = 0;
    for (let k = 0; k < 8; k++) code |= (ink[at + (around[k] as number)] as number) << k;
    if (table[code]) removed.push(at);
  }
  for (const at of removed) ink[at] = 0;
  return removed;
}

const SEEN = 2;

function neighboursOf(
  ink: Uint8Array,
  around: readonly number[],
  lists: readonly (readonly number[])[],
  width: number,
  height: number,
): number[] {
  const found: number[] = [];
  for (const list of lists) {
    for (const at of list) {
      for (let k = 0; k < 8; k++) {
        const beside = at + (around[k] as number);
        if (ink[beside] !== 1 || isOnEdge(beside, width, height)) continue;
        ink[beside] = SEEN;
        found.push(beside);
      }
    }
  }
  for (const at of found) ink[at] = 1;
  return found;
}

function isOnEdge(at: number, width: number, height: number): boolean {
  const x = at % width;
  return x === 0 || x === width - 1 || at < width || at >= width * (height - 1);
}
