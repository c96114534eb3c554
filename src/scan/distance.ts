import { isInk, lowestBit, type PackedBits, packed } from "./packed-bits.ts";
import type { Bits } from "./raster.ts";
import { asPart, finished, inBands, type Sliced } from "./sliced.ts";

/** Steps of `distanceToPaper`: three to the pixel, as 3-4 chamfer distances count. */
export const STEPS_PER_PIXEL = 3;
const SIDEWAYS = 3;
const DIAGONAL = 4;

/** As `distancesToPaper`, in one go. */
export const distanceToPaper = (bits: Bits): Uint8Array => finished(distancesToPaper(bits));

/**
 * How far each pixel of ink lies from the nearest paper, in thirds of a pixel, 255 and more as 255;
 * 0 on paper. 3-4 chamfer distances in two passes (G. Borgefors, "Distance transformations in digital
 * images", CVGIP 34, 1986): within 8 % of the straight line. Beyond the picture lies paper. `known`: the
 * same ink packed, where it is at hand.
 */
export function* distancesToPaper(bits: Bits, known: PackedBits | null = null): Sliced<Uint8Array> {
  const { width, height } = bits;
  const picture = known ?? (yield* asPart(packed(bits), 0, 0.1));
  const { words, across } = picture;
  const far = new Uint8Array(bits.data.length);
  const lastBit = 1 << ((width - 1) & 31);
  /** Ink of a word but for that on the picture's own edge. */
  const innerOf = (word: number, column: number) => {
    const inner = column === 0 ? word & ~1 : word;
    return column === across - 1 ? inner & ~lastBit : inner;
  };
  const atEdge = (x: number, y: number) => {
    if (isInk(picture, x, y)) far[y * width + x] = SIDEWAYS;
  };
  const down = (y: number) => {
    for (let column = 0; column < across; column++) {
      let word = words[y * across + column] as number;
      if (word === 0) continue;
      word = innerOf(word, column);
      const start = y * width + (column << 5);
      for (; word !== 0; word &= word - 1) {
        const at = start + lowestBit(word);
        const above = at - width;
        const side = Math.min(far[at - 1] as number, far[above] as number) + SIDEWAYS;
        const corner = Math.min(far[above - 1] as number, far[above + 1] as number) + DIAGONAL;
        far[at] = Math.min(255, side, corner);
      }
    }
  };
  const up = (y: number) => {
    for (let column = across - 1; column >= 0; column--) {
      let word = words[y * across + column] as number;
      if (word === 0) continue;
      word = innerOf(word, column);
      const start = y * width + (column << 5);
      while (word !== 0) {
        const bit = 31 - Math.clz32(word);
        word ^= 1 << bit;
        const at = start + bit;
        const below = at + width;
        const side = Math.min(far[at + 1] as number, far[below] as number) + SIDEWAYS;
        const corner = Math.min(far[below + 1] as number, far[below - 1] as number) + DIAGONAL;
        far[at] = Math.min(far[at] as number, side, corner);
      }
    }
  };
  const downwards = inBands(bits, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      if (y === 0 || y === height - 1) {
        for (let x = 0; x < width; x++) atEdge(x, y);
        continue;
      }
      atEdge(0, y);
      atEdge(width - 1, y);
      down(y);
    }
  });
  yield* asPart(downwards, 0.1, 0.5);
  const upwards = inBands(bits, (from, to) => {
    // From the bottom up: as many rows from there.
    const [top, bottom] = [height - to, height - from];
    for (let y = Math.min(bottom, height - 1) - 1; y >= Math.max(1, top); y--) up(y);
  });
  yield* asPart(upwards, 0.5, 1);
  return far;
}
