import type { Point } from "../../base/index.ts";
import type { PreparedPage } from "./prepared-page.ts";

/** How much ink is at a place, 0 on paper, 1 in full ink; between pixels in a straight line. */
export function darkness({ flat, full, bare }: PreparedPage, x: number, y: number): number {
  const { width, height, data } = flat;
  const left = Math.floor(x);
  const top = Math.floor(y);
  if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= height) return 0;
  const at = top * width + left;
  const [dx, dy] = [x - left, y - top];
  const light =
    ((data[at] as number) * (1 - dx) + (data[at + 1] as number) * dx) * (1 - dy) +
    ((data[at + width] as number) * (1 - dx) + (data[at + width + 1] as number) * dx) * dy;
  return Math.min(1.1, (255 - light - bare) / (full - bare));
}

/** All ink in a disc, in pixels of full ink. */
export function inkInDisc(page: PreparedPage, [x, y]: Point, radius: number): number {
  let sum = 0;
  const reach = Math.ceil(radius) + 1;
  const [middleX, middleY] = [Math.round(x), Math.round(y)];
  for (let py = middleY - reach; py <= middleY + reach; py++) {
    for (let px = middleX - reach; px <= middleX + reach; px++) {
      // The rim counts by how much of the pixel lies inside it.
      const share = Math.min(1, Math.max(0, radius + 0.5 - Math.hypot(px - x, py - y)));
      if (share > 0) sum += share * darkness(page, px, py);
    }
  }
  return sum;
}

/** Ink across a line at a point, in pixels of full ink: its width, however blurred it is. */
export function inkAcross(
  page: PreparedPage,
  [x, y]: Point,
  [alongX, alongY]: Point,
  reach: number,
): number {
  let sum = 0;
  const step = 0.5;
  for (let offset = -reach; offset <= reach; offset += step) {
    sum += darkness(page, x - alongY * offset, y + alongX * offset) * step;
  }
  return sum;
}

/** Pixels of the mask across a line at a point, without a break. */
export function maskAcross(
  { ink }: PreparedPage,
  [x, y]: Point,
  [alongX, alongY]: Point,
  reach: number,
): number {
  const isInk = (offset: number) =>
    ink.data[Math.round(y + alongX * offset) * ink.width + Math.round(x - alongY * offset)] === 1;
  const step = 0.5;
  let sum = isInk(0) ? step : 0;
  for (const side of [step, -step]) {
    for (let offset = side; Math.abs(offset) <= reach && isInk(offset); offset += side) sum += step;
  }
  return sum;
}
