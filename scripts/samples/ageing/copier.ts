import { seededRandom } from "../../../src/base/index.ts";
import type { Page } from "../drawing/page.ts";
import type { Raster } from "./raster.ts";

/** Where on the ramp from paper to ink the copier decides for ink, and how sharply. */
const THRESHOLD = 0.42;
const STEEPNESS = 9;
const FLOOR = 1 / (1 + Math.exp(THRESHOLD * STEEPNESS));

/** Darkness of the page, 0 white to 1 black. */
export function inkOf({ canvas, pen }: Page): Raster {
  const { width, height } = canvas;
  const { data } = pen.getImageData(0, 0, width, height);
  const values = new Float32Array(width * height);
  for (let index = 0; index < values.length; index++) {
    values[index] = 1 - (data[index * 4] ?? 255) / 255;
  }
  return { width, height, values };
}

/** A copier hardens edges, starves some areas and leaves pinholes; `pale` and `worn` in -1..1. */
export function copied(ink: number, pale: number, worn: number): number {
  if (ink < 0.01) return 0;
  const hard = 1 / (1 + Math.exp(-(ink - THRESHOLD) * STEEPNESS)) - FLOOR;
  return Math.max(0, hard) * (0.9 + 0.08 * pale - 0.12 * Math.max(0, worn - 0.25));
}

const DOTS = 620;
const HAIRS = 2;

/** Dirt on the copier's glass: dots and a few hairs. */
export function specksOf(seed: number, width: number, height: number): Raster {
  const random = seededRandom(seed);
  const values = new Float32Array(width * height);
  const dot = (x: number, y: number, radius: number, dark: number) => {
    for (let row = Math.floor(y - radius); row <= y + radius; row++) {
      for (let column = Math.floor(x - radius); column <= x + radius; column++) {
        if (row < 0 || column < 0 || row >= height || column >= width) continue;
        const near = 1 - Math.hypot(column - x, row - y) / (radius + 0.6);
        const index = row * width + column;
        values[index] = Math.max(values[index] ?? 0, dark * Math.min(1, Math.max(0, near * 2)));
      }
    }
  };
  for (let count = 0; count < DOTS; count++) {
    const radius = 0.6 + random.next() ** 4 * 2.6;
    dot(random.next() * width, random.next() * height, radius, 0.25 + random.next() * 0.5);
  }
  for (let hair = 0; hair < HAIRS; hair++) {
    let [x, y, angle] = [random.next() * width, random.next() * height, random.next() * 6];
    for (let step = 0; step < 110; step++) {
      dot(x, y, 0.7, 0.4);
      angle += (random.next() - 0.5) * 0.16;
      x += Math.cos(angle);
      y += Math.sin(angle);
    }
  }
  return { width, height, values };
}
