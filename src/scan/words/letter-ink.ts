import { inkPixels } from "../ink-pixels.ts";
import type { PreparedPage } from "../lines/prepared-page.ts";
import { type Bits, bitsOf } from "../raster.ts";
import { inBands, type Sliced } from "../sliced.ts";

/** Ink of letters is at least this share as dark as the middle of the usual line. */
const LEAST = 0.28;

/**
 * The page's ink with the small holes open that following lines fills: without them a B is a blot, and
 * an 8 may be a dot.
 */
export function* letterInk({ ink, flat, full }: PreparedPage): Sliced<Bits> {
  const { width, height } = ink;
  const out = bitsOf(width, height);
  const lightest = 255 - LEAST * full;
  const inkIn = inkPixels(ink);
  const keep = (at: number) => {
    if ((flat.data[at] as number) <= lightest) out.data[at] = 1;
  };
  yield* inBands(ink, (top, bottom) => inkIn(top * width, bottom * width, keep));
  return out;
}
