import type { Rgba } from "../raster.ts";
import type { Xyz } from "./adaptation.ts";
import { linear } from "./linear-light.ts";

/** The Minkowski norm over all edges: 6, as the method's authors found best. */
const NORM = 6;

/** The light's colour, linear sRGB, from the sum of all edges; null where there are none. */
export function greyEdge({ width, height, data }: Rgba, full: number): Xyz | null {
  const isFull = new Uint8Array(width * height);
  for (let at = 0, from = 0; at < isFull.length; at++, from += 4) {
    const [red, green, blue] = [data[from], data[from + 1], data[from + 2]] as [
      number,
      number,
      number,
    ];
    if (red > full || green > full || blue > full) isFull[at] = 1;
  }
  const light = ([0, 1, 2] as const).map((i) => {
    let sum = 0;
    for (let y = 1; y < height - 1; y++)
      for (let x = 1, at = y * width + 1; x < width - 1; x++, at++) {
        if (isFull[at - 1] || isFull[at + 1] || isFull[at - width] || isFull[at + width]) continue;
        const from = 4 * at + i;
        const across = linear(data[from + 4] as number) - linear(data[from - 4] as number);
        const down =
          linear(data[from + 4 * width] as number) - linear(data[from - 4 * width] as number);
        const square = across * across + down * down;
        // The slope's length to the power of the norm.
        sum += square * square * square;
      }
    return sum ** (1 / NORM);
  });
  return light.every((one) => one > 0) ? (light as unknown as Xyz) : null;
}
