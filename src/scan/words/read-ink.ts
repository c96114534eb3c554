import { type Component, componentsOf } from "../components.ts";
import { type Bits, bitsOf, type Grey } from "../raster.ts";

/** One letter as a reader says it, and where in the picture its ink begins and ends, pixels. */
export interface ReadLetter {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  /** The number of its word: a gap stands before the next. */
  readonly word: number;
}

/** So dark, as a share of the darkest pixels, is ink; and so many of all pixels are those. */
const INK = 0.4;
const DARKEST = 0.02;
/** Half a letter is no paler than this share of the darkest. */
const PALE = 0.6;
/** Pieces at least so large count: pixels, and squares of the letters' height. */
const DUST = 12;
const LEAST = 0.012;
/** A letter's ink may lie so far aside of where it was read, in heights. */
const ASIDE = 0.12;
const FAR_ASIDE = 0.6;
/** Letters of one word stand no farther apart, and a colour no farther behind a number, in heights. */
const WIDEST_GAP = 0.42;
const WORD_GAP = 0.9;
/** Letters and signs that are printed in two pieces or more. */
const IN_PIECES = /[ij:;=%"]/;

/**
 * Whether the ink of a crop fits the letters that were read from it: no ink where none was read, no letter
 * without ink or in pieces that it is not made of, no gap where another may have stood.
 */
export function fitsInk(grey: Grey, letters: readonly ReadLetter[]): boolean {
  const { ink, darkest } = inkIn(grey);
  const { list } = componentsOf(ink);
  const tall = heightOf(list.filter(({ area }) => area >= DUST));
  const pieces = list.filter(({ area }) => area >= LEAST * tall * tall);
  return (
    !hasPale(grey, letters, darkest) &&
    !hasGap(letters, tall) &&
    (isOneEach(letters, pieces, tall) || isHeld(letters, pieces, tall))
  );
}

/** Thin print is pale all over: what is ink goes by the darkest of it. */
function inkIn({ width, height, data }: Grey): { readonly ink: Bits; readonly darkest: number } {
  const counts = new Uint32Array(256);
  for (const value of data) counts[value] = (counts[value] as number) + 1;
  let darkest = 0;
  for (let left = DARKEST * data.length; darkest < 255 && left > 0; darkest++) {
    left -= counts[darkest] as number;
  }
  const least = 255 - INK * (255 - darkest);
  const ink = bitsOf(width, height);
  for (let at = 0; at < data.length; at++) ink.data[at] = (data[at] as number) < least ? 1 : 0;
  return { ink, darkest };
}

/** Whether half of a letter is much paler than the print on the whole: there more of it may be lost. */
function hasPale(
  { width, height, data }: Grey,
  letters: readonly ReadLetter[],
  darkest: number,
): boolean {
  const least = 255 - PALE * (255 - darkest);
  const isDark = (from: number, to: number): boolean => {
    for (let y = 0; y < height; y++) {
      for (let x = Math.max(0, from); x < Math.min(width, to); x++) {
        if ((data[y * width + x] as number) < least) return true;
      }
    }
    return false;
  };
  return letters.some(({ text, from, to }) => {
    if (!/[A-Za-z0-9]/.test(text)) return false;
    const middle = Math.round((from + to) / 2);
    return !isDark(from, middle) || !isDark(middle, to);
  });
}

/** Height of the tall ones, pixels. */
function heightOf(pieces: readonly Component[]): number {
  const heights = pieces.map(({ top, bottom }) => bottom - top + 1).sort((a, b) => a - b);
  return heights[Math.floor(0.75 * (heights.length - 1))] ?? 0;
}

function hasGap(letters: readonly ReadLetter[], tall: number): boolean {
  return letters.some((letter, n) => {
    const next = letters[n + 1];
    if (next?.word !== letter.word) return false;
    // The gap between a number and its colour is often lost.
    const isLost = /\d/.test(letter.text) && /[A-Z]/.test(next.text);
    return next.from - letter.to > (isLost ? WORD_GAP : WIDEST_GAP) * tall;
  });
}

const middleOf = ({ left, right }: Component) => (left + right) / 2;

/** As many pieces as letters, in order, each about where it was read. */
function isOneEach(
  letters: readonly ReadLetter[],
  pieces: readonly Component[],
  tall: number,
): boolean {
  if (letters.length !== pieces.length) return false;
  const sorted = [...pieces].sort((a, b) => middleOf(a) - middleOf(b));
  return letters.every(({ from, to }, n) => {
    const piece = sorted[n] as Component;
    return Math.abs(middleOf(piece) - (from + to) / 2) <= FAR_ASIDE * tall;
  });
}

/** Every piece in a letter or across several, and every letter with its ink in one piece. */
function isHeld(
  letters: readonly ReadLetter[],
  pieces: readonly Component[],
  tall: number,
): boolean {
  const aside = ASIDE * tall;
  const isIn = ({ from, to }: ReadLetter, at: number) => at > from - aside && at < to + aside;
  const isAcross = ({ from, to }: ReadLetter, { left, right }: Component) =>
    Math.min(to, right) - Math.max(from, left) > 0.5 * (to - from);
  const isRead = (piece: Component) =>
    letters.some((letter) => isIn(letter, middleOf(piece)) || isAcross(letter, piece));
  const isWhole = (letter: ReadLetter): boolean => {
    const own = pieces.filter(
      ({ left, right }) => isIn(letter, left + 1) && isIn(letter, right - 1),
    );
    if (own.length > 1) return IN_PIECES.test(letter.text);
    return pieces.some(
      ({ left, right }) => right > letter.from - aside && left < letter.to + aside,
    );
  };
  return pieces.every(isRead) && letters.every(isWhole);
}
