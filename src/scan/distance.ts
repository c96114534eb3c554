import type { Bits } from "./raster.ts";

/** Steps of `distanceToPaper`: three to the pixel, as 3-4 chamfer distances count. */
export const STEPS_PER_PIXEL = 3;
const SIDEWAYS = 3;
const DIAGONAL = 4;

/**
 * How far each pixel of ink lies from the nearest paper, in thirds of a pixel, 255 and more as 255;
 * 0 on paper. 3-4 chamfer distances in two passes (G. Borgefors, "Distance transformations in digital
 * images", CVGIP 34, 1986): within 8 % of the straight line. Beyond the picture lies paper.
 */
export function distanceToPaper({ width, height, data }: Bits): Uint8Array {
  const far = new Uint8Array(data.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = y * width + x;
      if (!data[at]) continue;
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) {
        far[at] = SIDEWAYS;
        continue;
      }
      far[at] = least(
        far[at - 1] as number,
        far[at - width] as number,
        far[at - width - 1] as number,
        far[at - width + 1] as number,
        255,
      );
    }
  }
  for (let y = height - 2; y > 0; y--) {
    for (let x = width - 2; x > 0; x--) {
      const at = y * width + x;
      if (!data[at]) continue;
      far[at] = least(
        far[at + 1] as number,
        far[at + width] as number,
        far[at + width + 1] as number,
        far[at + width - 1] as number,
        far[at] as number,
      );
    }
  }
  return far;
}

function least(beside: number, above: number, left: number, right: number, known: number): number {
  let found = known;
  if (beside + SIDEWAYS < found) found = beside + SIDEWAYS;
  if (above + SIDEWAYS < found) found = above + SIDEWAYS;
  if (left + DIAGONAL < found) found = left + DIAGONAL;
  if (right + DIAGONAL < found) found = right + DIAGONAL;
  return found;
}
