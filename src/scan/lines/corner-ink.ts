import type { Point } from "../../base/index.ts";
import { headingOf } from "./branch.ts";
import { darkness } from "./darkness.ts";
import {
  type Axis,
  type FittedLine,
  fittedLine,
  lineBetween,
  profileOf,
  STEP,
  valueAt,
  widthOf,
} from "./line-profile.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { SolidInk } from "./solid-ink.ts";
import type { Zone } from "./zones.ts";

/**
 * In line widths, half the disc that is looked at: less than the smallest dot's, which is three lines
 * wide, so that a dot fills its four corners and two plain lines leave them empty.
 */
const DISC = 1.4;
/** In line widths, and in pixels at least: between the lines of a grid that is looked at. */
const GRID = 0.2;
const LEAST = 0.4;
/** In line widths beyond the place: on so much of it a line's way through the place is fitted. */
const [FIT_FROM, FIT_TO] = [0.3, 2.8];
/** Sine of the least angle between two lines that have four corners. */
const ASLANT = 0.5;
/** Lines that differ more in width are not measured right. */
const UNLIKE = 0.2;

/**
 * How much of the corners between two lines that meet is filled with ink: 0 where they plainly cross, 1
 * in a dot, the second emptiest of the four corners' shares; null where there are no such corners.
 *
 * A line's profile a(x) is measured beside the place, b(y) the other's. Blurred evenly, two lines that
 * cross at right angles are exactly a + b - ab, however wide the blur: the blur of a product of x's and
 * y's is the product of the blurs. A dot is ink where this leaves paper: the share s of it is fitted in
 * each corner by least squares, ink = model + s (1 - model). A dot fills all four, a white spot in
 * it empties one; the arc of a line that jumps the other fills two at one side of a straight line, and so
 * does a letter that stands on it.
 */
export function cornerInk(
  { page, lineWidth, usual }: SolidInk,
  zone: Zone,
  ways: readonly (readonly Point[])[],
): number | null {
  const axes = axesOf(page, zone, ways);
  if (!axes) return null;
  const [one, other] = axes.map((axis) => fittedLine(page, zone, axis, lineWidth)) as [
    FittedLine,
    FittedLine,
  ];
  const turn = one.along[0] * other.along[1] - one.along[1] * other.along[0];
  if (Math.abs(turn) < ASLANT) return null;
  const on =
    ((other.at[0] - one.at[0]) * other.along[1] - (other.at[1] - one.at[1]) * other.along[0]) /
    turn;
  const middle: Point = [one.at[0] + one.along[0] * on, one.at[1] + one.along[1] * on];
  const [a, b] = [profileOf(page, one), profileOf(page, other)];
  const [wideA, wideB] = [widthOf(a), widthOf(b)];
  if (Math.min(wideA, wideB) < UNLIKE * Math.max(wideA, wideB)) return null;
  const peak = Math.max(a[0] as number, b[0] as number);
  const drawn = (wideA + wideB) / 2;
  // Inks differ on a page: a line paler than the usual one is not as dark where it is solid.
  const ink = Math.max(peak, Math.min(1, peak / usual), darkestAt(page, middle, drawn / 4));
  const wide = drawn / ink;
  const [filled, empty] = [new Float64Array(4), new Float64Array(4)];
  const reach = DISC * wide;
  const step = Math.max(LEAST, GRID * wide);
  for (let y = -reach; y <= reach; y += step) {
    for (let x = -reach; x <= reach; x += step) {
      if (x * x + y * y > reach * reach) continue;
      const fromOne = one.along[0] * y - one.along[1] * x;
      const fromOther = other.along[0] * y - other.along[1] * x;
      const paper =
        (1 - Math.min(1, valueAt(a, fromOne) / ink)) *
        (1 - Math.min(1, valueAt(b, fromOther) / ink));
      const dark = Math.min(1.1, darkness(page, middle[0] + x, middle[1] + y) / ink);
      const corner = (fromOne > 0 ? 1 : 0) + (fromOther > 0 ? 2 : 0);
      filled[corner] = (filled[corner] as number) + paper * (dark - (1 - paper));
      empty[corner] = (empty[corner] as number) + paper * paper;
    }
  }
  return filled.map((sum, n) => sum / Math.max(empty[n] as number, 1e-6)).sort()[1] as number;
}

/** The two lines that four ways are, each with the one that faces it. */
function axesOf(
  { lineWidth }: PreparedPage,
  { at, radius }: Zone,
  ways: readonly (readonly Point[])[],
): readonly [Axis, Axis] | null {
  const round: Half[] = [];
  for (const way of ways) {
    const piece =
      headingOf(way, at, radius + FIT_FROM * lineWidth, radius + FIT_TO * lineWidth) ??
      headingOf(way, at, 0, radius + FIT_TO * lineWidth);
    if (!piece) return null;
    const [x, y] = piece.at;
    round.push({ way, middle: piece.at, turn: Math.atan2(y - at[1], x - at[0]) });
  }
  if (round.length !== 4) return null;
  round.sort((one, other) => one.turn - other.turn);
  const [a, b, c, d] = round as [Half, Half, Half, Half];
  return [axisBetween(a, c), axisBetween(b, d)];
}

interface Half {
  readonly way: readonly Point[];
  readonly middle: Point;
  /** Where it lies round the place. */
  readonly turn: number;
}

const axisBetween = (half: Half, facing: Half): Axis => ({
  ...lineBetween(half.middle, facing.middle),
  halves: [half.way, facing.way],
});

/** The darkest mean of nine points, at a place and a step to each side of it. */
function darkestAt(page: PreparedPage, [x, y]: Point, apart: number): number {
  const step = Math.max(STEP, apart);
  const meanAt = (atX: number, atY: number) => {
    let sum = 0;
    for (let dy = -step; dy <= step; dy += step) {
      for (let dx = -step; dx <= step; dx += step) sum += darkness(page, atX + dx, atY + dy);
    }
    return sum / 9;
  };
  return Math.max(
    meanAt(x, y),
    meanAt(x + step, y),
    meanAt(x - step, y),
    meanAt(x, y + step),
    meanAt(x, y - step),
  );
}
