import { distance, nearestOnSegment, type Point } from "../../base/index.ts";

/** A spot on a run of straight segments. */
export interface SpotOnLine {
  readonly at: Point;
  /** Index of the segment, i.e. of its first point. */
  readonly segment: number;
  /** From the point that was asked about. */
  readonly distance: number;
}

/** The spot of the run that is nearest to `p`; null for a run of no segment. */
export function nearestOnLine(points: readonly Point[], p: Point): SpotOnLine | null {
  let best: SpotOnLine | null = null;
  for (let segment = 0; segment + 1 < points.length; segment++) {
    const at = nearestOnSegment(p, points[segment] as Point, points[segment + 1] as Point);
    const away = distance(p, at);
    if (!best || away < best.distance) best = { at, segment, distance: away };
  }
  return best;
}

export function lengthOf(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) {
    length += distance(points[i - 1] as Point, points[i] as Point);
  }
  return length;
}

/** The point after `along` pixels of the run and the unit vector it runs in there. */
export function pointAlong(
  points: readonly Point[],
  along: number,
): { at: Point; way: Point } | null {
  let left = along;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    const step = distance(a, b);
    if (step > 0 && (left <= step || i === points.length - 1)) {
      const share = Math.min(1, left / step);
      const way: Point = [(b[0] - a[0]) / step, (b[1] - a[1]) / step];
      return { at: [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share], way };
    }
    left -= step;
  }
  return null;
}

/** The longest segment's middle: where a wire's words stand clear of its corners. */
export function middleOfLongest(points: readonly Point[]): { at: Point; way: Point } | null {
  let best: { at: Point; way: Point; length: number } | null = null;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    const length = distance(a, b);
    if (length > (best?.length ?? 0)) {
      best = {
        at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
        way: [(b[0] - a[0]) / length, (b[1] - a[1]) / length],
        length,
      };
    }
  }
  return best;
}

/** Points nearer to one another than this are one, pixels. */
export const SAME = 0.01;

export const samePoint = (a: Point, b: Point): boolean =>
  Math.abs(a[0] - b[0]) <= SAME && Math.abs(a[1] - b[1]) <= SAME;

/**
 * Corners between `start` and `end` without those that bend nothing: repeated ones and those on
 * the straight between their neighbours.
 */
export function withoutIdleCorners(start: Point, corners: readonly Point[], end: Point): Point[] {
  const kept: Point[] = [];
  corners.forEach((corner, index) => {
    const before = kept.at(-1) ?? start;
    const after = corners[index + 1] ?? end;
    if (samePoint(before, corner) || samePoint(corner, after)) return;
    const straight = nearestOnSegment(corner, before, after);
    if (distance(straight, corner) > SAME) kept.push(corner);
  });
  return kept;
}
