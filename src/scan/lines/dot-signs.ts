import type { Point } from "../../base/index.ts";
import { inkAcross, inkInDisc, maskAcross } from "./darkness.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Zone } from "./zones.ts";

/** Half the disc in which a dot is looked for, in line widths: as large as dots are drawn. */
const DISC = 2.75;
/** In line widths: beyond the disc and so much more a line's own width is measured, on so much of it. */
const FREE = 0.6;
const LOOKED_ALONG = 4;

/** What speaks for a dot at a place: `joint.ts` says what the measures mean. */
export interface DotSigns {
  readonly solid: number;
  readonly extra: number;
}

export function dotSigns(
  page: PreparedPage,
  zone: Zone,
  ways: readonly (readonly Point[])[],
): DotSigns {
  const { extra, width } = inkBeyondLines(page, zone, ways);
  return { solid: zone.blob / width, extra };
}

/**
 * Ink in a disc beyond that of the lines which enter it, in squares of their width. `width` is theirs
 * too, and never less than their mask is wide: a blob is measured in the mask, and where lines are pale
 * they have less ink than width, and their plain crossings would look as solid as dots.
 */
function inkBeyondLines(
  page: PreparedPage,
  zone: Zone,
  ways: readonly (readonly Point[])[],
): { extra: number; width: number } {
  const { lineWidth } = page;
  const { at } = zone;
  const radius = DISC * lineWidth;
  const from = radius + FREE * lineWidth;
  const measured = ways.map((way) =>
    widthAlong(page, at, way, from, from + LOOKED_ALONG * lineWidth),
  );
  const known = measured.filter((one) => one !== null);
  const meanOf = (all: readonly number[]) =>
    all.reduce((sum, one) => sum + one, 0) / all.length || lineWidth;
  const mean = meanOf(known.map(({ inked }) => inked));
  // A line that bends, as one that jumps another, brings more ink into the disc than a straight one.
  const lines = ways.map((way, n) => (measured[n]?.inked ?? mean) * lengthWithin(at, way, radius));
  // What several lines share in the middle, they bring but once.
  const shared = (ways.length / 2 - 1) * mean * mean;
  const expected = lines.reduce((sum, ink) => sum + ink, 0) - shared;
  const extra = (inkInDisc(page, at, radius) - expected) / (mean * mean);
  return { extra, width: Math.max(mean, meanOf(known.map(({ masked }) => masked))) };
}

/** Pixels of a way within a distance of a place, the way to its first pixel included. */
function lengthWithin([x, y]: Point, way: readonly Point[], radius: number): number {
  let [lastX, lastY, length] = [x, y, 0];
  // Straight steps of a few pixels: a thinned line's stairs are longer than the line.
  for (let n = 3; n < way.length; n += 3) {
    const [nextX, nextY] = way[n] as Point;
    const far = Math.hypot(nextX - x, nextY - y);
    if (far > radius) return length + Math.max(0, radius - Math.hypot(lastX - x, lastY - y));
    length += Math.hypot(nextX - lastX, nextY - lastY);
    [lastX, lastY] = [nextX, nextY];
  }
  return length;
}

/** How wide a line is between two distances from a place, in its ink and in its mask; null if not there. */
function widthAlong(
  page: PreparedPage,
  [x, y]: Point,
  way: readonly Point[],
  from: number,
  to: number,
): { inked: number; masked: number } | null {
  const reach = Math.max(2, Math.round(page.lineWidth));
  const inked: number[] = [];
  const masked: number[] = [];
  for (let n = 0; n < way.length; n++) {
    const at = way[n] as Point;
    const far = Math.hypot(at[0] - x, at[1] - y);
    if (far > to) break;
    if (far < from) continue;
    const [before, after] = [way[Math.max(0, n - reach)], way[Math.min(way.length - 1, n + reach)]];
    if (!before || !after) continue;
    const length = Math.hypot(after[0] - before[0], after[1] - before[1]);
    if (length === 0) continue;
    const along: Point = [(after[0] - before[0]) / length, (after[1] - before[1]) / length];
    inked.push(inkAcross(page, at, along, 2 * page.lineWidth));
    masked.push(maskAcross(page, at, along, 2 * page.lineWidth) - 2 * page.spread);
  }
  if (inked.length === 0) return null;
  // The middle one: a word beside the line is ink of its own.
  const middleOf = (all: number[]) => all.sort((a, b) => a - b)[all.length >> 1] as number;
  return { inked: middleOf(inked), masked: middleOf(masked) };
}
