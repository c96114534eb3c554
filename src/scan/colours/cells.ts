import type { Rgba } from "../raster.ts";
import type { Xyz } from "./adaptation.ts";
import { linear } from "./linear-light.ts";

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
