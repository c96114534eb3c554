import type { Point } from "../../base/index.ts";
import { type Bow, bowIn, straightened } from "./bow.ts";
import { distanceFrom, lineThrough } from "./straight-line.ts";

/** Stronger bows than this are no lens for pages. */
const MOST = 0.4;
/** A side bowed by less than this share of the diagonal, and less than a pixel, is straight. */
const LEAST_BOW = 0.0002;
/** How many times its own scatter the bow must explain before it is believed. */
const LEAST_GAIN = 30;

/**
 * The bow of a lens from points along lines that are straight on paper: the k that makes them
 * straightest (the plumb lines of D. C. Brown, "Close-range camera calibration", 1971). Null where there is nothing
 * to correct: straight already, or curved otherwise than a lens does it, as curled paper is.
 */
export function fitBow(
  sides: readonly (readonly Point[])[],
  width: number,
  height: number,
): Bow | null {
  const long = sides.filter((side) => side.length >= 8);
  if (long.length < 2) return null;
  const cost = (k: number) => {
    const bow = bowIn(width, height, k);
    return long.map((side) => unevenness(side, bow));
  };
  const k = leastOf((at) => sum(cost(at)), -MOST, MOST);
  const [before, after] = [cost(0), cost(k)];
  const bow = bowIn(width, height, k);
  if (Math.abs(k) > 0.98 * MOST) return null;
  if (Math.max(...long.map((side) => sagitta(side, bow))) < Math.max(1, LEAST_BOW * 2 * bow.unit)) {
    return null;
  }
  const count = sum(long.map((side) => side.length));
  const scatter = Math.max(sum(after) / count, 1e-6);
  if (sum(before) - sum(after) < LEAST_GAIN * scatter) return null;
  const isWorse = (side: number) =>
    (after[side] as number) > 1.5 * (before[side] as number) + 0.1 * (long[side]?.length ?? 0);
  return long.some((_, side) => isWorse(side)) ? null : bow;
}

/** Squared pixels between points and the line through them, once straightened, at their own scale. */
function unevenness(side: readonly Point[], bow: Bow): number {
  const straight = side.map((point) => straightened(bow, point));
  const line = lineThrough(straight);
  if (!line) return 0;
  const shrunk = span(straight) / Math.max(1e-9, span(side));
  return sum(straight.map((point) => (distanceFrom(line, point) / shrunk) ** 2));
}

/** How far a bow moves the middle of a side off the straight line between its ends, in pixels. */
function sagitta(side: readonly Point[], bow: Bow): number {
  const [first, last] = [side[0] as Point, side[side.length - 1] as Point];
  const middle: Point = [(first[0] + last[0]) / 2, (first[1] + last[1]) / 2];
  const line = lineThrough([first, last].map((point) => straightened(bow, point)));
  return line ? Math.abs(distanceFrom(line, straightened(bow, middle))) : 0;
}

const span = (points: readonly Point[]) => {
  const [a, b] = [points[0] as Point, points[points.length - 1] as Point];
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
};

const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

/** Where a function with one valley is least: golden section search (J. Kiefer, 1953). */
function leastOf(of: (at: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [atA, atB] = [of(a), of(b)];
  for (let round = 0; round < 40; round++) {
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - golden * (high - low);
      atA = of(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + golden * (high - low);
      atB = of(b);
    }
  }
  return (low + high) / 2;
}
