import { Groups } from "../../base/index.ts";
import type { Component } from "../components.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";

/** A letter: one piece of ink, or the pieces that a line cut it into, by their numbers in the list of components. */
export interface Glyph extends Component {
  readonly numbers: readonly number[];
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

export const BY_LEVEL = 1;
export const BY_UPRIGHT = 2;

/** What is known of a piece of ink beyond its box. */
export interface Inked {
  /** As `distanceToPaper` counts, at its thickest. */
  readonly thickest: Uint8Array;
  /** Whether it touches a level line that was taken away, an upright one, or both. */
  readonly cutBy: Uint8Array;
}

/** Sorts pieces of ink by size, those first put together that a line had cut. */
export function glyphsOf(
  list: readonly Component[],
  lineWidth: number,
  { thickest, cutBy }: Inked,
): Glyphs {
  const least = Math.max(LEAST_PIXELS, SHORTEST * lineWidth);
  const most = Math.max(LEAST_TALLEST, TALLEST * lineWidth);
  const letters: Glyph[] = [];
  const marks: Glyph[] = [];
  for (const glyph of putTogether(list, cutBy, lineWidth, most)) {
    const [wide, tall] = [glyph.right - glyph.left + 1, glyph.bottom - glyph.top + 1];
    const [short, long] = wide < tall ? [wide, tall] : [tall, wide];
    if (short > most || long > LONGEST * most) continue;
    const far = Math.max(...glyph.numbers.map((number) => thickest[number] as number));
    if (short > 1.2 * least && isBlob(short, long, far)) continue;
    if (long < least || (short < MARK * least && long < LONG_MARK * least)) marks.push(glyph);
    if (long >= least) letters.push(glyph);
  }
  return { letters, marks };
}

/** Pieces of a letter share so much of the shorter one's length along the line that cut them. */
const ONE_LETTER = 0.5;

/** Pieces that face each other across a line that was taken away are one letter. */
function putTogether(
  list: readonly Component[],
  cutBy: Uint8Array,
  lineWidth: number,
  most: number,
): readonly Glyph[] {
  const cut = list.flatMap((piece, number) =>
    cutBy[number] && piece.right - piece.left < most && piece.bottom - piece.top < most
      ? [number]
      : [],
  );
  const groups = new Groups(list.length);
  cut.sort((a, b) => (list[a] as Component).left - (list[b] as Component).left);
  cut.forEach((one, n) => {
    const a = list[one] as Component;
    for (let m = n + 1; m < cut.length; m++) {
      const b = list[cut[m] as number] as Component;
      if (b.left > a.right + 2 * lineWidth) break;
      const by = (cutBy[one] as number) & (cutBy[cut[m] as number] as number);
      if (areOneLetter(a, b, by, 2 * lineWidth)) groups.join(cut[m] as number, one);
    }
  });
  const found = new Map<number, Glyph>();
  list.forEach((piece, number) => {
    const root = groups.of(number);
    const known = found.get(root);
    found.set(root, known ? joined(known, piece, number) : { ...piece, numbers: [number] });
  });
  return [...found.values()];
}

function areOneLetter(a: Component, b: Component, by: number, gap: number): boolean {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left) + 1;
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) + 1;
  const width = Math.min(a.right - a.left, b.right - b.left) + 1;
  const height = Math.min(a.bottom - a.top, b.bottom - b.top) + 1;
  return (
    ((by & BY_LEVEL) !== 0 && across >= ONE_LETTER * width && down > -gap) ||
    ((by & BY_UPRIGHT) !== 0 && down >= ONE_LETTER * height && across > -gap)
  );
}

const joined = (glyph: Glyph, piece: Component, number: number): Glyph => ({
  left: Math.min(glyph.left, piece.left),
  top: Math.min(glyph.top, piece.top),
  right: Math.max(glyph.right, piece.right),
  bottom: Math.max(glyph.bottom, piece.bottom),
  area: glyph.area + piece.area,
  numbers: [...glyph.numbers, number],
});

/** A dot where lines join: as thick as it is wide. */
const isBlob = (short: number, long: number, far: number): boolean =>
  short > 0.6 * long && (2 * far) / STEPS_PER_PIXEL > 0.7 * short;
