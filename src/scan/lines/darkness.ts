import type { Point } from "../../base/index.ts";
import type { PreparedPage } from "./prepared-page.ts";

/** How much ink is at a place, 0 on paper, 1 in full ink; between pixels in a straight line. */
export function darkness({ flat, full, bare }: PreparedPage, x: number, y: number): number {
  const { width, height, data } = flat;
  const left = Math.floor(x);
  const top = Math.floor(y);
  if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= height) return 0;
  const at = top * width + left;
  const dx = x - left;
  const dy = y - top;
  const light =
    ((data[at] as number) * (1 - dx) + (data[at + 1] as number) * dx) * (1 - dy) +
    ((data[at + width] as number) * (1 - dx) + (data[at + width + 1] as number) * dx) * dy;
  return Math.min(1.1, (255 - light - bare) / (full - bare));
}

/** The middle one of the darknesses of a way's places between two distances from a place. */
export function middleDarkness(
  page: PreparedPage,
  [x, y]: Point,
  way: readonly Point[],
  from: number,
  to: number,
): number {
  const found: number[] = [];
  for (const [px, py] of way) {
    const far = Math.hypot(px - x, py - y);
    if (far > to) break;
    if (far >= from) found.push(darkness(page, px, py));
  }
  return found.length === 0 ? 1 : (found.sort((a, b) => a - b)[found.length >> 1] as number);
}
