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
  readonly words: boolean;
}

/** Common practice, no source: line widths of ISO 128 from 0.25 to 0.7 mm, dots three to five lines wide. */
export function randomStyle(random: Random): Style {
  const line = random.pick([0.25, 0.35, 0.5, 0.7]);
  return {
    pitch: line * (9 + 6 * random.next()),
    line,
    dot: 3 + 2 * random.next(),
    dotsAtTs: random.chance(0.6),
    jumps: random.chance(0.35),
    rounding: random.chance(0.25) ? 0.3 + 0.2 * random.next() : 0,
    words: random.chance(0.7),
  };
}
