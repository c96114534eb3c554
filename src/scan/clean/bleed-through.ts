import { components } from "../components.ts";
import { inkPixels } from "../ink-pixels.ts";
import { type Bits, bitsOf, type Grey, greyOf, type Rgba } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";
import { histogram, otsu } from "../threshold.ts";

/** Darkness below which nothing shows: the paper's grain. */
const LEAST = 16;
/** Fewer dark pixels in a piece are noise. */
const LEAST_SURE = 3;
/** This share of what is no paper is fainter than full ink: soft edges, and the print of the other side. */
const FAINTER = 0.95;

/**
 * The faint print of the other side: pieces of ink that nowhere are as dark as `sure` of full ink. A
 * stroke that touches ink of this side stays, whichever side it is from. `darkest` is the darkest of
 * red, green and blue, on flattened paper: a yellow wire is as dark as a black one there, and what
 * shines through paper is grey.
 */
export function* bleedThroughOf(darkest: Grey, sure: number): Sliced<Bits> {
  const { width, height, data } = darkest;
  const full = inkDarkness(yield* asPart(histogram(darkest), 0, 0.1));
  const sureLevel = 255 - Math.max(2 * LEAST, sure * full);
  const shown = bitsOf(width, height);
  const show = inBands(darkest, (top, bottom) => {
    for (let at = top * width; at < bottom * width; at++)
      shown.data[at] = (data[at] as number) < 255 - LEAST ? 1 : 0;
  });
  yield* asPart(show, 0.1, 0.2);
  const { labels, list } = yield* asPart(components(shown), 0.2, 0.8);
  const inkIn = inkPixels(shown);
  const sureOf = new Uint32Array(list.length + 1);
  const count = (at: number) => {
    const label = labels[at] as number;
    if ((data[at] as number) <= sureLevel) sureOf[label] = (sureOf[label] as number) + 1;
  };
  yield* asPart(
    inBands(shown, (top, bottom) => inkIn(top * width, bottom * width, count)),
    0.8,
    0.9,
  );
  const takeOut = (at: number) => {
    if ((sureOf[labels[at] as number] as number) >= LEAST_SURE) shown.data[at] = 0;
  };
  yield* asPart(
    inBands(shown, (top, bottom) => inkIn(top * width, bottom * width, takeOut)),
    0.9,
    1,
  );
  return shown;
}

/** Darkness of full ink, 0 to 255: nearly the most there is, for faint print may outweigh it. */
function inkDarkness(counts: Uint32Array): number {
  const level = otsu(counts);
  let all = 0;
  for (let value = 0; value <= level; value++) all += counts[value] as number;
  let left = (1 - FAINTER) * all;
  for (let value = 0; value <= level; value++) {
    left -= counts[value] as number;
    if (left < 0) return 255 - value;
  }
  return 255;
}

/** Of each pixel the darkest of red, green and blue. */
export function* darkestOf(picture: Rgba): Sliced<Grey> {
  const { width, height, data } = picture;
  const out = greyOf(width, height);
  yield* inBands(picture, (top, bottom) => {
    for (let at = top * width, from = 4 * at; at < bottom * width; at++, from += 4) {
      const [red, green] = [data[from] as number, data[from + 1] as number];
      out.data[at] = Math.min(red, green, data[from + 2] as number);
    }
  });
  return out;
}
