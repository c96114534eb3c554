import type { Rgba } from "../../../src/scan/raster.ts";

export type Colour = readonly [red: number, green: number, blue: number];

export const WHITE: Colour = [255, 255, 255];
export const BLACK: Colour = [20, 20, 20];

/** A sheet of one colour. */
export function sheet(width: number, height: number, [red, green, blue]: Colour = WHITE): Rgba {
  const data = new Uint8ClampedArray(4 * width * height);
  for (let at = 0; at < data.length; at += 4) data.set([red, green, blue, 255], at);
  return { width, height, data };
}

/** Draws a filled box, its edges inside. */
export function box(
  { width, data }: Rgba,
  left: number,
  top: number,
  right: number,
  bottom: number,
  [red, green, blue]: Colour = BLACK,
): void {
  for (let y = top; y <= bottom; y++) {
    for (let x = left; x <= right; x++) data.set([red, green, blue, 255], 4 * (y * width + x));
  }
}

export const colourAt = ({ width, data }: Rgba, x: number, y: number): Colour =>
  [...data.slice(4 * (y * width + x), 4 * (y * width + x) + 3)] as unknown as Colour;

/** As a camera has it: each pixel the mean of itself and its eight neighbours. */
export function blurred({ width, height, data }: Rgba): Rgba {
  const out = data.slice();
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      for (let c = 0; c < 3; c++) {
        let sum = 0;
        for (let dy = -1; dy <= 1; dy++) {
          for (let dx = -1; dx <= 1; dx++) {
            sum += data[4 * ((y + dy) * width + x + dx) + c] as number;
          }
        }
        out[4 * (y * width + x) + c] = sum / 9;
      }
    }
  }
  return { width, height, data: out };
}
