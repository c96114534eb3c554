import type { Point } from "../../base/index.ts";
import type { PreparedPage } from "./prepared-page.ts";

/** In line widths: paper is looked at so far round a place. */
const REACH = 14;
/** Places looked at from end to end of that, each way. */
const ACROSS = 24;
/** So many of them must be paper. */
const ENOUGH = 60;
/** ... of which ink, or what looks like it, covers not so large a share of the picture there. */
const COVERED = 0.9;
/** The middle three fifths of what varies by chance span so many deviations. */
const SPAN = 1.68;
/**
 * Grain so rough makes forks and blobs that nobody drew: of 150 made pages that are barely legible one has it
 * (docs/line-following.md).
 */
const ROUGH = 0.13;

/** Whether grain round a place hides what lines do there. */
export const isRoughAround = (page: PreparedPage, place: Point): boolean =>
  grainAround(page, place) > ROUGH;

/**
 * How rough the paper is round a place, as a share of how dark a line is on it: one deviation of the mean of
 * three by three pixels of the picture. 0 where too little paper is near to tell; Infinity where that is so
 * because nearly all of it looks like ink.
 */
export function grainAround(
  { flat, ink, full, bare, lineWidth, scale }: PreparedPage,
  [x, y]: Point,
): number {
  const { width, height, data } = flat;
  const reach = REACH * lineWidth;
  const step = (2 * reach) / ACROSS;
  const means: number[] = [];
  let looked = 0;
  for (let dy = -reach; dy <= reach; dy += step) {
    const row = Math.round(y + dy);
    if (row < scale || row >= height - scale) continue;
    for (let dx = -reach; dx <= reach; dx += step) {
      const column = Math.round(x + dx);
      if (column < scale || column >= width - scale) continue;
      looked++;
      let [sum, inked] = [0, 0];
      for (let v = -scale; v <= scale; v += scale) {
        for (let u = -scale; u <= scale; u += scale) {
          const at = (row + v) * width + column + u;
          sum += 255 - (data[at] as number);
          inked += ink.data[at] as number;
        }
      }
      if (inked === 0) means.push(sum / 9);
    }
  }
  if (looked - means.length > COVERED * looked) return Number.POSITIVE_INFINITY;
  if (means.length < ENOUGH) return 0;
  means.sort((a, b) => a - b);
  const at = (share: number) => means[Math.floor(share * means.length)] as number;
  return (at(0.8) - at(0.2)) / SPAN / (full - bare);
}
