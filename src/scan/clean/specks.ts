import { type Component, components } from "../components.ts";
import { inkPixels } from "../ink-pixels.ts";
import type { Bits } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";

/** Ink nearer than this many times a speck's size makes it the point of a letter or a broken line. */
const COMPANY = 2;

/** Specks whose company is looked for in a slice. */
const SLICE = 2_000;

/**
 * Pieces of ink no larger than `largest` pixels either way with no larger ink near them. A decimal
 * point, a dot on an i and a dash of a broken line have company and stay: better a speck too many than
 * 15 for 1.5. The pieces' pixels are 1.
 */
export function* specksOf(ink: Bits, largest: number): Sliced<Bits> {
  const { width, height } = ink;
  const { labels, list } = yield* asPart(components(ink), 0, 0.7);
  const isSmall = (one: Component) =>
    one.right - one.left < largest && one.bottom - one.top < largest;
  // By label: 0 paper, 1 ink that stays, 2 a speck.
  const kinds = Uint8Array.from([0, ...list.map((one) => (isSmall(one) ? 2 : 1))]);
  const lonely = kinds.slice();
  for (let n = 0; n < list.length; n++) {
    if (n % SLICE === SLICE - 1) yield 0.7 + (0.1 * n) / list.length;
    if (kinds[n + 1] === 2 && hasCompany(ink, labels, kinds, list[n] as Component))
      lonely[n + 1] = 1;
  }
  const data = new Uint8Array(labels.length);
  const inkIn = inkPixels(ink);
  const mark = (at: number) => {
    if (lonely[labels[at] as number] === 2) data[at] = 1;
  };
  yield* asPart(
    inBands(ink, (top, bottom) => inkIn(top * width, bottom * width, mark)),
    0.8,
    1,
  );
  return { width, height, data };
}

function hasCompany(
  { width, height }: Bits,
  labels: Int32Array,
  kinds: Uint8Array,
  { left, top, right, bottom }: Component,
): boolean {
  const near = COMPANY * Math.max(right - left + 1, bottom - top + 1);
  const [from, to] = [Math.max(0, left - near), Math.min(width - 1, right + near)];
  for (let y = Math.max(0, top - near); y <= Math.min(height - 1, bottom + near); y++) {
    for (let x = from; x <= to; x++) if (kinds[labels[y * width + x] as number] === 1) return true;
  }
  return false;
}
