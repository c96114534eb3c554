import { boxAround } from "../../base/index.ts";
import type { Bits } from "../raster.ts";
import { extentIn } from "./neighbours.ts";
import type { WordLine } from "./word-lines.ts";

/** In heights of the letters: two rows so near to one another in one line, with a letter's room between them. */
const GAP = 1.2;
/** Where what lies between them is no mere line, letters may have grown together with it: over so far. */
const TORN_GAP = 3.3;
const ASIDE = 0.25;
const ALIKE = 0.75;
/** At these heights of the row a line between two of them is looked for. */
const HEIGHTS = [0.2, 0.5, 0.8];

/**
 * Rows that go on beyond a line which crosses them, or beyond other ink as tall as they are: a letter may be hidden in
 * it, and each of the two reads well without it. `ink`: what is left without the lines, letters among it.
 */
export function partedRows(
  rows: readonly WordLine[],
  lines: Bits,
  ink: Bits,
): ReadonlySet<WordLine> {
  const found = new Set<WordLine>();
  for (const way of ["level", "upright"] as const) {
    const sorted = rows
      .filter((row) => row.way === way || row.glyphs.length === 1)
      .map((row) => ({ row, at: extentIn(boxAround(row.glyphs), way) }))
      .sort((a, b) => a.at.from - b.at.from);
    const metOnWay = (across: number, first: number, end: number): "ink" | "line" | null => {
      let isLine = false;
      for (let along = first; along < end; along++) {
        const [x, y] = way === "level" ? [along, across] : [across, along];
        if (ink.data[y * ink.width + x]) return "ink";
        if (lines.data[y * lines.width + x]) isLine = true;
      }
      return isLine ? "line" : null;
    };
    const tallest = sorted.reduce((most, { at }) => Math.max(most, at.high - at.low + 1), 0);
    sorted.forEach(({ row, at }, n) => {
      const tall = at.high - at.low + 1;
      for (let m = n + 1; m < sorted.length; m++) {
        const { row: next, at: other } = sorted[m] as (typeof sorted)[number];
        // Longer rows begin no later than shorter ones end.
        if (other.from > at.to + TORN_GAP * tallest) break;
        const height = other.high - other.low + 1;
        const gap = other.from - at.to;
        if (gap < 1 || gap > TORN_GAP * Math.max(tall, height)) continue;
        if (Math.min(tall, height) < ALIKE * Math.max(tall, height)) continue;
        const aside = Math.abs(at.low + at.high - other.low - other.high) / 2;
        if (aside > ASIDE * tall) continue;
        const met = HEIGHTS.map((share) =>
          metOnWay(Math.round(at.low + share * (tall - 1)), at.to + 1, other.from),
        );
        const isNear = gap <= GAP * Math.max(tall, height);
        if (met.every((one) => one !== null) && (isNear || met.includes("ink")))
          found.add(row).add(next);
      }
    });
  }
  return found;
}
