import type { Point } from "../../base/index.ts";

/** A line without ends: the points where x cos + y sin = away, away from the origin in pixels. */
export interface StraightLine {
  readonly cos: number;
  readonly sin: number;
  readonly away: number;
}

/** The line with the least sum of squared distances to the points; null for fewer than two places. */
export function lineThrough(points: readonly Point[]): StraightLine | null {
  let [sx, sy] = [0, 0];
  for (const [x, y] of points) {
    sx += x;
    sy += y;
  }
  const [mx, my] = [sx / points.length, sy / points.length];
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  if (!(xx + yy > 0)) return null;
  // The normal is the direction in which the points spread least.
  const along = Math.atan2(2 * xy, xx - yy) / 2;
  const [cos, sin] = [-Math.sin(along), Math.cos(along)];
  return { cos, sin, away: mx * cos + my * sin };
}

export const distanceFrom = ({ cos, sin, away }: StraightLine, [x, y]: Point): number =>
  x * cos + y * sin - away;

/** Where two lines cross; null for parallel ones. */
export function crossing(a: StraightLine, b: StraightLine): Point | null {
  const det = a.cos * b.sin - a.sin * b.cos;
  if (Math.abs(det) < 1e-6) return null;
  return [(a.away * b.sin - b.away * a.sin) / det, (b.away * a.cos - a.away * b.cos) / det];
}
