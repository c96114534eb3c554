import type { Rgba } from "../raster.ts";
import { adapterFrom, labOf, type Xyz, xyzOfLinear } from "./adaptation.ts";
import type { Lab } from "./colour-difference.ts";
import { linear } from "./linear-light.ts";

/** A byte from which on a channel is taken as clipped. */
const CLIPPED = 252;

/**
 * Reads a photo's colours as they are under D65: the mean of `grain` by `grain` pixels round a place;
 * null where it is too bright to tell a colour, or no longer in the photo.
 */
export function colourSampler(
  { width, height, data }: Rgba,
  white: Xyz,
  grain: number,
): (x: number, y: number) => Lab | null {
  const adapted = adapterFrom(white);
  const side = Math.max(1, Math.round(grain));
  const before = (side - 1) / 2;
  return (x, y) => {
    const [left, top] = [Math.round(x - before), Math.round(y - before)];
    if (left < 0 || top < 0 || left + side > width || top + side > height) return null;
    let [red, green, blue, full] = [0, 0, 0, 0];
    for (let row = top; row < top + side; row++)
      for (let at = 4 * (row * width + left), end = at + 4 * side; at < end; at += 4) {
        const [r, g, b] = [data[at], data[at + 1], data[at + 2]] as [number, number, number];
        // One full channel is a strong colour; two of them, and brightness is lost.
        if (Number(r >= CLIPPED) + Number(g >= CLIPPED) + Number(b >= CLIPPED) > 1) full++;
        red += linear(r);
        green += linear(g);
        blue += linear(b);
      }
    const of = side * side;
    if (2 * full > of) return null;
    return labOf(adapted(xyzOfLinear([red / of, green / of, blue / of])));
  };
}
