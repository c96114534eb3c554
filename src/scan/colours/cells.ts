import type { Rgba } from "../raster.ts";
import type { Xyz } from "./adaptation.ts";

/** A small square of a photo. */
export interface Cell {
  /** Mean red, green and blue, linear sRGB 0 to 1. */
  readonly rgb: Xyz;
  /** Mean Y. */
  readonly light: number;
  /** Whether one even surface fills it, nowhere too bright to tell its colour. */
  readonly isEven: boolean;
}

/** Pixels of a cell a side. */
const SIDE = 6;
/** Deviation of Y against its mean that an even surface stays under, with a camera's noise. */
const EVEN = 0.1;

/** Linear light of a byte of sRGB (IEC 61966-2-1). */
const LINEAR = Float64Array.from({ length: 256 }, (_, byte) => {
  const share = byte / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
});
export const linear = (byte: number): number => LINEAR[byte] as number;

export function cellsOf({ width, height, data }: Rgba, full: number): readonly Cell[] {
  const cells: Cell[] = [];
  for (let top = 0; top + SIDE <= height; top += SIDE)
    for (let left = 0; left + SIDE <= width; left += SIDE) {
      let [red, green, blue, light, square, clipped] = [0, 0, 0, 0, 0, 0];
      for (let y = top; y < top + SIDE; y++)
        for (let x = left, at = 4 * (y * width + left); x < left + SIDE; x++, at += 4) {
          const [r, g, b] = [data[at], data[at + 1], data[at + 2]] as [number, number, number];
          if (Math.max(r, g, b) > full) clipped++;
          const y1 = 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
          red += linear(r);
          green += linear(g);
          blue += linear(b);
          light += y1;
          square += y1 * y1;
        }
      const of = SIDE * SIDE;
      const mean = light / of;
      const deviation = Math.sqrt(Math.max(0, square / of - mean * mean));
      cells.push({
        rgb: [red / of, green / of, blue / of],
        light: mean,
        isEven: clipped === 0 && deviation < EVEN * mean,
      });
    }
  return cells;
}

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
