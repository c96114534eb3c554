import { type Grey, greyOf } from "../raster.ts";
import { headOver, resized } from "./cut-crop.ts";
import { READ_PAD, READ_TALL, type WordCrop } from "./word-crop.ts";

/** One way to hand a crop to the reader. */
export interface WordLook {
  readonly grey: Grey;
  /** Whether it is to be taken as a line of words, or as one word without gaps. */
  readonly as: "line" | "word";
}

/** The first look, enough for clear print: the ink with a little room at its ends. */
export const firstLook = (crop: WordCrop): WordLook => ({ grey: trimmed(crop, 0.35), as: "line" });

/** The ink with all the room there is. */
export const roomyLook = (crop: WordCrop): WordLook => ({ grey: crop.grey, as: "line" });

/**
 * Looks at what was doubtful at the first, as unlike it as can be, so that it means something when two
 * agree: smaller, with more room, as one word.
 */
export const furtherLooks = (crop: WordCrop): readonly WordLook[] => [
  { grey: resized(trimmed(crop, 0.35), SMALLER), as: "line" },
  roomyLook(crop),
  { grey: trimmed(crop, 0.15), as: "word" },
];

const SMALLER = 0.72;

/** An upright crop read from the top down instead of from the bottom up. */
export const otherWayRound = (crop: WordCrop): WordLook => ({
  grey: headOver(trimmed(crop, 0.35)),
  as: "line",
});

/** Darker than this is more than the paper's grain. */
const FAINT = 225;
/** So much of it, in squares of the letters' height, is a letter that hardly printed. */
const FAINT_LETTER = 0.1;

/** Whether something too faint to be counted as ink stands at either end: a letter may be missing. */
export function hasFaintEnds({ grey, aside }: WordCrop): boolean {
  const ends = [
    [READ_PAD, READ_PAD + aside - EDGE],
    [grey.width - READ_PAD - aside + EDGE, grey.width - READ_PAD],
  ] as const;
  let dark = 0;
  for (let y = READ_PAD; y < grey.height - READ_PAD; y++) {
    for (const [from, to] of ends) {
      for (let x = from; x < to; x++) {
        if ((grey.data[y * grey.width + x] as number) < FAINT) dark++;
      }
    }
  }
  return dark > FAINT_LETTER * READ_TALL * READ_TALL;
}

/** The soft edge of the outermost letters, pixels of the crop. */
const EDGE = 4;

/** A crop with so much, 0 to 1, of the room at its ends. */
function trimmed({ grey, aside }: WordCrop, kept: number): Grey {
  const off = Math.round(aside * (1 - kept));
  if (off <= 0 || grey.width <= 2 * (off + READ_PAD)) return grey;
  const out = greyOf(grey.width - 2 * off, grey.height);
  for (let y = 0; y < grey.height; y++) {
    const row = y * grey.width;
    out.data.set(grey.data.subarray(row + off, row + grey.width - off), y * out.width);
    // The margin stays white.
    out.data.fill(255, y * out.width, y * out.width + READ_PAD);
    out.data.fill(255, (y + 1) * out.width - READ_PAD, (y + 1) * out.width);
  }
  return out;
}
