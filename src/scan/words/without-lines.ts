import { type Bits, bitsOf } from "../raster.ts";

/** A straight run this many line widths long is a line: no letter on a drawing has one. */
const LONG = 15;
/** What sticks out of a line by no more than this share of its width is its ragged edge. */
const RAGGED = 0.5;

export interface WithoutLines {
  /** Ink that is left: letters, and what symbols have of curves and short strokes. */
  readonly ink: Bits;
  /** Ink that was taken away. */
  readonly lines: Bits;
  /** Of all ink, what is part of a level line, and what of an upright one. */
  readonly level: Bits;
  readonly upright: Bits;
}

/**
 * Takes level and upright lines out of the ink. Where a letter's stroke goes through a line, the piece of
 * line between its two ends is given back, so that the letter stays whole.
 */
export function withoutLines(ink: Bits, lineWidth: number): WithoutLines {
  const least = Math.max(24, LONG * lineWidth);
  const level = bitsOf(ink.width, ink.height);
  const upright = bitsOf(ink.width, ink.height);
  const ragged = Math.max(1, Math.round(RAGGED * lineWidth));
  markRuns(ink, level, "level", least);
  markRuns(ink, upright, "upright", least);
  const lines = bitsOf(ink.width, ink.height);
  const left = bitsOf(ink.width, ink.height);
  for (let at = 0; at < ink.data.length; at++) {
    lines.data[at] = level.data[at] || upright.data[at] ? 1 : 0;
    left.data[at] = ink.data[at] && !lines.data[at] ? 1 : 0;
  }
  mend(left, lines, level, "level", ragged);
  mend(left, lines, upright, "upright", ragged);
  return { ink: left, lines, level, upright };
}

type Way = "level" | "upright";

/** Steps through the pixels along a line and across it. */
const stepsOf = ({ width, height }: Bits, way: Way) =>
  way === "level"
    ? { count: height, length: width, along: 1, across: width }
    : { count: width, length: height, along: width, across: 1 };

function markRuns(ink: Bits, out: Bits, way: Way, least: number): void {
  const { count, length, along, across } = stepsOf(ink, way);
  for (let row = 0; row < count; row++) {
    const first = row * across;
    for (let n = 0; n < length; n++) {
      if (!ink.data[first + n * along]) continue;
      const start = n;
      while (n < length && ink.data[first + n * along]) n++;
      if (n - start < least) continue;
      for (let m = start; m < n; m++) out.data[first + m * along] = 1;
    }
  }
}

/** Goes across every line, place by place: ragged edges go with it, strokes through it come back. */
function mend(left: Bits, lines: Bits, own: Bits, way: Way, ragged: number): void {
  const { count, length, along, across } = stepsOf(left, way);
  const inkFrom = (at: number, row: number, step: 1 | -1): number => {
    let reach = 0;
    for (let r = row + step; r >= 0 && r < count && left.data[at + r * across]; r += step) reach++;
    return reach;
  };
  for (let n = 0; n < length; n++) {
    const at = n * along;
    for (let row = 0; row < count; row++) {
      if (!own.data[at + row * across]) continue;
      const top = row;
      while (row + 1 < count && own.data[at + (row + 1) * across]) row++;
      const above = inkFrom(at, top, -1);
      const below = inkFrom(at, row, 1);
      if (above > 0 && above <= ragged) fill(left, lines, at, top - above, top - 1, across, false);
      if (below > 0 && below <= ragged) fill(left, lines, at, row + 1, row + below, across, false);
      if (above <= ragged && below <= ragged) continue;
      if (!goesThrough(left, at, top, row, across, along, n, length, above > ragged)) continue;
      fill(left, lines, at, top, row, across, true);
    }
  }
}

/** Whether ink stands right across a line from where it stands here, or a little aside for a slanting stroke. */
function goesThrough(
  left: Bits,
  at: number,
  top: number,
  bottom: number,
  across: number,
  along: number,
  n: number,
  length: number,
  isAbove: boolean,
): boolean {
  const aside = Math.ceil((bottom - top + 1) / 2);
  const row = isAbove ? bottom + 1 : top - 1;
  for (let by = -aside; by <= aside; by++) {
    if (n + by < 0 || n + by >= length) continue;
    if (left.data[at + by * along + row * across] === 1) return true;
  }
  return false;
}

function fill(
  left: Bits,
  lines: Bits,
  at: number,
  from: number,
  to: number,
  across: number,
  isInk: boolean,
): void {
  for (let row = from; row <= to; row++) {
    left.data[at + row * across] = isInk ? 1 : 0;
    lines.data[at + row * across] = isInk ? 0 : 1;
  }
}
