import type { Component } from "../components.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";

/** A piece of ink by its number in the list of components. */
export interface Glyph extends Component {
  readonly number: number;
}

export interface Glyphs {
  /** Pieces as large as letters and digits are. */
  readonly letters: readonly Glyph[];
  /** Smaller pieces: hyphens, points, the dots of an i. */
  readonly marks: readonly Glyph[];
}

/** Letters are 1.8 to 10 mm tall on drawings whose lines are 0.25 to 0.7 mm wide (common practice, no source). */
const SHORTEST = 1.6;
const TALLEST = 20;
/** Fewer pixels than this can't be told apart. */
const LEAST_PIXELS = 6;
const LEAST_TALLEST = 60;
/** Letters that touch one another are one piece, so many times as long as it is tall. */
const LONGEST = 8;

/** A hyphen may be as long as a small letter is tall; in shares of the least letter. */
const MARK = 1;
const LONG_MARK = 3;

/** Sorts pieces of ink by size. `far` counts as `distanceToPaper` does, for the same page. */
export function glyphsOf(
  list: readonly Component[],
  lineWidth: number,
  thickest: readonly number[],
): Glyphs {
  const least = Math.max(LEAST_PIXELS, SHORTEST * lineWidth);
  const most = Math.max(LEAST_TALLEST, TALLEST * lineWidth);
  const letters: Glyph[] = [];
  const marks: Glyph[] = [];
  list.forEach((piece, number) => {
    const [wide, tall] = [piece.right - piece.left + 1, piece.bottom - piece.top + 1];
    const [short, long] = wide < tall ? [wide, tall] : [tall, wide];
    if (short > most || long > LONGEST * most) return;
    if (short > 1.2 * least && isBlob(short, long, thickest[number] as number)) return;
    const glyph = { ...piece, number };
    if (long < least || (short < MARK * least && long < LONG_MARK * least)) marks.push(glyph);
    if (long >= least) letters.push(glyph);
  });
  return { letters, marks };
}

/** A dot where lines join: as thick as it is wide. */
const isBlob = (short: number, long: number, far: number): boolean =>
  short > 0.6 * long && (2 * far) / STEPS_PER_PIXEL > 0.7 * short;
