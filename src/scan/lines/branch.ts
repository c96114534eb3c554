import { distance, type Point } from "../../base/index.ts";
import type { Skeleton, Stretch } from "./skeleton.ts";

/** A stretch as it leaves one of its ends. */
export interface Branch {
  readonly stretch: number;
  /** Whether it leaves by the end that is called `from`. */
  readonly isFrom: boolean;
}

/** The places of a stretch in the order in which a branch runs; the first `most` of them. */
export function placesAlong(
  skeleton: Skeleton,
  { stretch, isFrom }: Branch,
  most = Number.POSITIVE_INFINITY,
): Point[] {
  const { pixels } = skeleton.stretches[stretch] as Stretch;
  const { width } = skeleton;
  const points: Point[] = [];
  const count = Math.min(most, pixels.length);
  for (let n = 0; n < count; n++) {
    const at = pixels[isFrom ? n : pixels.length - 1 - n] as number;
    const x = at % width;
    points.push([x, (at - x) / width]);
  }
  return points;
}

/** How far it is along all places of a way, in pixels. */
export const lengthOf = (way: readonly Point[]): number =>
  way.reduce((sum, point, n) => sum + (n === 0 ? 0 : distance(point, way[n - 1] as Point)), 0);

/** A straight piece of a branch: where it lies in the middle, and which way it runs, length 1. */
export interface Heading {
  readonly at: Point;
  readonly along: Point;
}

/**
 * Which way a branch runs between two distances from `origin`, away from it; null where it has fewer
 * than two pixels there. The direction is from the middle of the nearer half to that of the farther.
 */
export function headingOf(
  points: readonly Point[],
  [x, y]: Point,
  from: number,
  to: number,
): Heading | null {
  const inside: Point[] = [];
  // The root is slow, and needed only where a place lies hardly nearer or farther than asked.
  const [surelyNearer, hardlyNear] = [from * from * (1 - HARDLY), from * from * (1 + HARDLY)];
  const [hardlyFar, surelyFarther] = [to * to * (1 - HARDLY), to * to * (1 + HARDLY)];
  for (let n = 0; n < points.length; n++) {
    const point = points[n] as Point;
    const [dx, dy] = [point[0] - x, point[1] - y];
    const square = dx * dx + dy * dy;
    if (square < surelyNearer) continue;
    if (square > surelyFarther) break;
    if (square <= hardlyNear || square >= hardlyFar) {
      const far = Math.hypot(dx, dy);
      if (far < from) continue;
      if (far > to) break;
    }
    inside.push(point);
  }
  const count = inside.length;
  if (count < 2) return null;
  const half = Math.floor(count / 2);
  const near = middleOf(inside, 0, half);
  const away = middleOf(inside, count - half, count);
  const length = Math.hypot(away[0] - near[0], away[1] - near[1]);
  if (length === 0) return null;
  return {
    at: middleOf(inside, 0, count),
    along: [(away[0] - near[0]) / length, (away[1] - near[1]) / length],
  };
}

/** Squares of distances that differ by less than that share are looked at closely. */
const HARDLY = 1e-9;

function middleOf(points: readonly Point[], from: number, to: number): Point {
  let [x, y] = [0, 0];
  for (let n = from; n < to; n++) {
    const point = points[n] as Point;
    x += point[0];
    y += point[1];
  }
  return [x / (to - from), y / (to - from)];
}

/** Degrees by which two branches that leave one place fail to be one straight line. */
export function bendBetween(a: Point, b: Point): number {
  const cos = -(a[0] * b[0] + a[1] * b[1]);
  return (Math.acos(Math.min(1, Math.max(-1, cos))) * 180) / Math.PI;
}
