import type { Box } from "../../base/index.ts";
import type { Grey } from "../raster.ts";

/** Degrees clockwise that a word is turned: 0 is level, 270 is read from the bottom up, 90 from the top down. */
export type WordTurn = 0 | 90 | 270;

/** One run of words on one line, cut out and turned level for a reader. */
export interface WordCrop {
  /** Around its ink, pixels of the picture. */
  readonly box: Box;
  readonly turn: WordTurn;
  /** How tall its letters are, pixels of the picture. */
  readonly tall: number;
  /** Whether all letters are equally tall, as capitals and digits are and small letters are not. */
  readonly isCapitals: boolean;
  /** Whether a line touches its letters or runs through them: parts of letters may be hidden. */
  readonly isCut: boolean;
  /** Whether anything dark that is none of its letters lies among them or at its ends: a letter may be missing. */
  readonly isCrowded: boolean;
  /** Its ink alone, on white with a margin, letters about `READ_TALL` pixels tall. */
  readonly grey: Grey;
  /** The same with what of a line may hide a bar or a stem of its letters; null where none touches it. */
  readonly bridged: Grey | null;
  /** Pixels of `grey` before and after the ink, beside the margin: what is too faint to count may stand there. */
  readonly aside: number;
}

/** Capitals this tall are read best: the reader's own network looks at lines 36 pixels high. */
export const READ_TALL = 32;
/** White around a crop, pixels: less, and letters at the rim are misread. */
export const READ_PAD = 14;
/** Room at both ends of a crop, in heights of its letters. */
export const ASIDE = 0.8;
