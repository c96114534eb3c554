import { type Box, boxAround } from "../../base/index.ts";
import type { Bits } from "../raster.ts";
import type { CropSource } from "./cut-crop.ts";
import type { WordLine } from "./word-lines.ts";

/** Which pixels of lines are kept in a word, where they may hide a bar or a stem of its letters. */
export interface Bridge {
  has(source: CropSource, x: number, y: number): boolean;
}

/** In heights: two stems this near to one another may be one letter. */
const ONE_LETTER = 0.62;
const STEM = 0.4;

/**
 * Keeps of lines no more than a letter's stroke is wide, in the middle of the line: inside the letters, from
 * stem to stem of what may be one letter, and right beside them where a bar or a stem may be hidden. `reach`
 * is how far off that may be, `stroke` how wide it is; pixels.
 */
export function bridgeIn(row: WordLine, tall: number, stroke: number, reach: number): Bridge {
  const spans = spansOf(row, tall);
  const beside: Readonly<Record<WordLine["way"], readonly Box[]>> = {
    level: spans.map((one) => ({ ...one, top: one.top - reach, bottom: one.bottom + reach })),
    upright: spans.map((one) => ({ ...one, left: one.left - reach, right: one.right + reach })),
  };
  return {
    has: ({ lines }, x, y) => {
      const isIn = ({ left, right, top, bottom }: Box) =>
        x >= left && x <= right && y >= top && y <= bottom;
      if (!beside.level.some(isIn) && !beside.upright.some(isIn)) return false;
      const level = [farTo(lines, x, y, -1, 0), farTo(lines, x, y, 1, 0)] as const;
      const upright = [farTo(lines, x, y, 0, -1), farTo(lines, x, y, 0, 1)] as const;
      const isLevel = level[0] + level[1] > upright[0] + upright[1];
      const [before, after] = isLevel ? upright : level;
      return Math.abs(before - after) < stroke && beside[isLevel ? "level" : "upright"].some(isIn);
    },
  };
}

/** Pixels: no line is so wide, and a line is seen to run the way in which it goes on so far. */
const FAR = 40;

/** How far a line goes on from one of its pixels, up to `FAR`. */
function farTo(
  { width, height, data }: Bits,
  x: number,
  y: number,
  dx: number,
  dy: number,
): number {
  let far = 0;
  for (let [u, v] = [x + dx, y + dy]; far < FAR; u += dx, v += dy, far++) {
    if (u < 0 || v < 0 || u >= width || v >= height || !data[v * width + u]) break;
  }
  return far;
}

/** Around each letter, and around two stems of one. */
function spansOf({ glyphs, way }: WordLine, tall: number): Box[] {
  const isLevel = way === "level";
  const from = (one: Box) => (isLevel ? one.left : one.top);
  const to = (one: Box) => (isLevel ? one.right : one.bottom);
  const isStem = (one: Box) => to(one) - from(one) < STEM * tall;
  const sorted = [...glyphs].sort((a, b) => from(a) - from(b));
  return sorted.flatMap((one, n): Box[] => {
    const next = sorted[n + 1];
    const isOne = next && isStem(one) && isStem(next) && from(next) - from(one) < ONE_LETTER * tall;
    return isOne ? [one, boxAround([one, next])] : [one];
  });
}
