import type { Point } from "../../base/index.ts";
import { darkness } from "./darkness.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Zone } from "./zones.ts";

/** Pixels between two values of a profile. */
export const STEP = 0.5;
/** In usual line widths: a line's profile is taken so far from the place, on so much of the line. */
const FROM = 0.6;
const ALONG = 2;
/** In usual line widths: between two profiles. */
const APART = 0.35;
/** Ink fainter than this ends a profile; fainter than the second, and growing again, it is another's. */
const EDGE = 0.04;
const FOOT = 0.3;

/** A line that runs through a place: a point of it, which way it runs, and its two halves. */
export interface Axis {
  readonly at: Point;
  readonly along: Point;
  readonly halves: readonly (readonly Point[])[];
}

/** As its ink lies: `points` are in the middle of it, on both sides of the place. */
export interface FittedLine {
  readonly at: Point;
  readonly along: Point;
  readonly points: readonly Point[];
}

/** The line through two points: its middle, and which way it runs. */
export function lineBetween([x, y]: Point, [u, v]: Point): { at: Point; along: Point } {
  const length = Math.hypot(u - x, v - y) || 1;
  return { at: [(x + u) / 2, (y + v) / 2], along: [(u - x) / length, (v - y) / length] };
}

/** The line through the ink of an axis's halves: where it was thinned it may lie half a pixel aside. */
export function fittedLine(
  page: PreparedPage,
  { at: [x, y], radius }: Zone,
  { at, along, halves }: Axis,
  lineWidth: number,
): FittedLine {
  const from = radius + FROM * lineWidth + STEP;
  const apart = Math.max(STEP, APART * lineWidth);
  const middles: Point[] = [];
  const points: Point[] = [];
  for (const half of halves) {
    let [allX, allY, all] = [0, 0, 0];
    const last = from + ALONG * lineWidth + STEP;
    const away = distancesUpTo(half, x, y, last + 2 * lineWidth);
    for (let far = from; far <= last; far += apart) {
      let [sumX, sumY, sum] = [0, 0, 0];
      for (let n = 0; n < away.length; n++) {
        const there = away[n] as number;
        if (there > far + 2 * lineWidth) break;
        if (Math.abs(there - far) > lineWidth) continue;
        const point = half[n] as Point;
        sumX += point[0];
        sumY += point[1];
        sum++;
      }
      if (sum === 0) continue;
      const aside = inkAside(page, [sumX / sum, sumY / sum], along, lineWidth);
      const [px, py] = [sumX / sum - along[1] * aside, sumY / sum + along[0] * aside];
      points.push([px, py]);
      allX += px;
      allY += py;
      all++;
    }
    if (all > 0) middles.push([allX / all, allY / all]);
  }
  const [first, second] = middles;
  if (!first || !second) return { at, along, points };
  return { ...lineBetween(first, second), points };
}

/** How far from a place points lie, up to the first that lies farther than `most`. */
function distancesUpTo(points: readonly Point[], x: number, y: number, most: number): number[] {
  const far: number[] = [];
  for (let n = 0; n < points.length; n++) {
    const point = points[n] as Point;
    const there = Math.hypot(point[0] - x, point[1] - y);
    if (there > most) break;
    far.push(there);
  }
  return far;
}

/** How far beside a point of a thinned line its ink has its middle, in pixels. */
function inkAside(page: PreparedPage, [x, y]: Point, along: Point, lineWidth: number): number {
  const reach = Math.ceil(1.2 * lineWidth);
  let [sum, moment] = [0, 0];
  for (let n = -reach; n <= reach; n++) {
    const dark = Math.max(0, darkness(page, x - along[1] * n, y + along[0] * n) - FOOT);
    sum += dark;
    moment += dark * n;
  }
  return sum === 0 ? 0 : moment / sum;
}

/** How dark a line is so many steps beside its middle: the middle values of both sides of many places. */
export function profileOf(page: PreparedPage, { along, points }: FittedLine): Float64Array {
  const count = Math.ceil((2 * page.lineWidth + 1.5) / STEP) + 1;
  const profile = new Float64Array(count);
  const both = new Float64Array(2 * points.length);
  for (let n = 0; n < count; n++) {
    const [dx, dy] = [-along[1] * n * STEP, along[0] * n * STEP];
    for (let place = 0; place < points.length; place++) {
      const point = points[place] as Point;
      both[2 * place] = darkness(page, point[0] + dx, point[1] + dy);
      both[2 * place + 1] = darkness(page, point[0] - dx, point[1] - dy);
    }
    const here = both.sort()[points.length] ?? 0;
    // Beyond its end a profile is 0.
    if (n > 1) {
      const before = profile[n - 1] as number;
      if (here < EDGE || (before < FOOT && here > before)) break;
    }
    profile[n] = here;
  }
  return profile;
}

/** Ink across a line, in pixels. */
export const widthOf = (profile: Float64Array) =>
  STEP * profile.reduce((sum, dark, n) => sum + (n === 0 ? dark : 2 * dark), 0);

/** How dark a line is so many pixels beside its middle. */
export function valueAt(profile: Float64Array, aside: number): number {
  const place = Math.abs(aside) / STEP;
  const n = Math.floor(place);
  if (n + 1 >= profile.length) return 0;
  return (profile[n] as number) * (1 + n - place) + (profile[n + 1] as number) * (place - n);
}
