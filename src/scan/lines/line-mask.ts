import type { Box, Point } from "../../base/index.ts";
import type { Bits } from "../raster.ts";
import { type PixelRows, pixelRows } from "./pixel-rows.ts";
import type { PreparedPage } from "./prepared-page.ts";
import { linesThrough } from "./through-word.ts";

/** The thinned lines of a page that may be followed. */
export interface LineMask {
  readonly lines: Bits;
  /** Of all its pixels that are line, in order. */
  readonly places: Int32Array;
  /** Places at which a line was cut off, by a word or by the user: nothing goes on beyond them. */
  readonly stops: ReadonlySet<number>;
}

/** In line widths: so far round a place a line is cut. */
const CUT = 1.5;

/**
 * Leaves out what lies in parts and in words, round places where the user cut a line, and what is said
 * to be none (`gone`: places). A part's outline, as wide as any line, is the part's too; a line that runs
 * through a word stays. All in pixels of the prepared page.
 */
export function lineMask(
  page: PreparedPage,
  parts: readonly Box[],
  words: readonly Box[],
  cuts: readonly Point[],
  gone: ReadonlySet<number>,
): LineMask {
  const { thinned, places, lineWidth } = page;
  const { width, height } = thinned;
  const data = new Uint8Array(width * height);
  for (let n = 0; n < places.length; n++) data[places[n] as number] = 1;
  const lines: Bits = { width, height, data };
  const rim = Math.ceil(lineWidth) + 1;
  for (const part of parts) clear(lines, pixelRows(part, rim, lines), null);
  const stops = new Set<number>();
  const kept = words.map((word) => linesThrough(page, lines, word));
  for (const word of words) clear(lines, pixelRows(word, 0, lines), stops);
  for (const at of kept.flat()) data[at] = 1;
  for (const [x, y] of cuts) {
    const radius = CUT * lineWidth;
    const box = { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius };
    clear(lines, pixelRows(box, 0, lines), stops);
  }
  for (const at of gone) data[at] = 0;
  return { lines, places: placesLeft(places, data), stops };
}

/** Those of some places that are line. */
function placesLeft(places: Int32Array, lines: Uint8Array): Int32Array {
  const left = new Int32Array(places.length);
  let count = 0;
  for (let n = 0; n < places.length; n++) {
    const at = places[n] as number;
    if (lines[at] === 1) left[count++] = at;
  }
  return left.subarray(0, count);
}

/** Takes lines out of a box, and notes where those ended up that went on outside it. */
function clear(
  { width, height, data }: Bits,
  { left, top, right, bottom }: PixelRows,
  stops: Set<number> | null,
) {
  if (stops) {
    const note = (x: number, y: number, inX: number, inY: number) => {
      if (x < 0 || y < 0 || x >= width || y >= height || !data[y * width + x]) return;
      for (let aside = -1; aside <= 1; aside++) {
        const beside = inX === x ? [x + aside, inY] : [inX, y + aside];
        if (data[(beside[1] as number) * width + (beside[0] as number)]) stops.add(y * width + x);
      }
    };
    for (let x = left; x < right; x++) {
      note(x, top - 1, x, top);
      note(x, bottom, x, bottom - 1);
    }
    for (let y = top; y < bottom; y++) {
      note(left - 1, y, left, y);
      note(right, y, right - 1, y);
    }
  }
  for (let y = top; y < bottom; y++) data.fill(0, y * width + left, y * width + right);
}
