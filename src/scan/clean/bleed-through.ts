import { componentsOf } from "../components.ts";
import { type Bits, bitsOf, type Grey, greyOf, type Rgba } from "../raster.ts";
import { histogramOf, otsu } from "../threshold.ts";

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
export function bleedThroughOf(darkest: Grey, sure: number): Bits {
  const { width, height, data } = darkest;
  const sureLevel = 255 - Math.max(2 * LEAST, sure * inkDarkness(darkest));
  const shown = bitsOf(width, height);
  for (let at = 0; at < data.length; at++)
    shown.data[at] = (data[at] as number) < 255 - LEAST ? 1 : 0;
  const { labels, list } = componentsOf(shown);
  const sureOf = new Uint32Array(list.length + 1);
  for (let at = 0; at < labels.length; at++) {
    const label = labels[at] as number;
    if (label !== 0 && (data[at] as number) <= sureLevel)
      sureOf[label] = (sureOf[label] as number) + 1;
  }
  const isFaint = Uint8Array.from([
    0,
    ...list.map((_, n) => ((sureOf[n + 1] as number) < LEAST_SURE ? 1 : 0)),
  ]);
  for (let at = 0; at < labels.length; at++)
    shown.data[at] = isFaint[labels[at] as number] as number;
  return shown;
}

/** Darkness of full ink, 0 to 255: nearly the most there is, for faint print may outweigh it. */
function inkDarkness(grey: Grey): number {
  const counts = histogramOf(grey);
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
export function darkestOf({ width, height, data }: Rgba): Grey {
  const out = greyOf(width, height);
  for (let at = 0, from = 0; at < out.data.length; at++, from += 4) {
    const [red, green] = [data[from] as number, data[from + 1] as number];
    out.data[at] = Math.min(red, green, data[from + 2] as number);
  }
  return out;
}
