import type { Random } from "../../../src/base/index.ts";

/** How a page is drawn; lengths in millimetres on paper. */
export interface Style {
  /** Between neighbouring places of the lattice. */
  readonly pitch: number;
  readonly line: number;
  /** Diameter of the dot where lines join, in line widths. */
  readonly dot: number;
  /** Whether a T has a dot; lines that meet four at a time always have. */
  readonly dotsAtTs: boolean;
  /** Whether the line across jumps in a half circle over the one it does not touch. */
  readonly jumps: boolean;
  /** Radius of corners; 0 for square ones. */
  readonly rounding: number;
  /** Words in parts and beside lines. */
  readonly words: boolean;
  /** Words written so that they touch a line, or lie over it. */
  readonly wordsOnLines: boolean;
  /** Of every fourth net the lines are so many times as wide as the others; 1 for none. */
  readonly thick: number;
  /** Colours of the nets' ink, in turn. */
  readonly inks: readonly string[];
}

const BLACK = ["black"];
/** Each dark enough to be seen on a grey copy. */
const COLOURS = ["black", "#141e78", "#961414", "#0a5a28"];

/**
 * Common practice, no source: line widths of ISO 128 from 0.25 to 0.7 mm, dots three to five
 * and a half lines wide.
 */
export function randomStyle(random: Random): Style {
  const line = random.pick([0.25, 0.35, 0.5, 0.7]);
  const thick = random.chance(0.3) ? 1.5 + 0.7 * random.next() : 1;
  return {
    // Room for the thickest line's jumps: an arc that its own ink fills is no arc.
    pitch: line * (thick > 1 ? 1.5 : 1) * (8 + 7 * random.next()),
    line,
    dot: 3 + 2.5 * random.next(),
    dotsAtTs: random.chance(0.6),
    jumps: random.chance(0.35),
    rounding: random.chance(0.25) ? 0.3 + 0.2 * random.next() : 0,
    words: random.chance(0.7),
    wordsOnLines: random.chance(0.25),
    thick,
    inks: random.chance(0.15) ? COLOURS : BLACK,
  };
}
