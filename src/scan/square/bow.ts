import type { Point } from "../../base/index.ts";

/**
 * How a lens bows straight lines. With r the distance from the middle in halves of the picture's
 * diagonal, a point seen at r belongs at r / (1 + k r^2): the division model (A. Fitzgibbon,
 * "Simultaneous linear estimation of multiple view geometry and lens distortion", CVPR 2001). Below 0
 * is a barrel, above 0 a cushion; for small ones k is the k1 of D. C. Brown (1966) too.
 */
export interface Bow {
  readonly k: number;
  readonly middle: Point;
  /** Half the diagonal, in pixels. */
  readonly unit: number;
}

export const bowIn = (width: number, height: number, k: number): Bow => ({
  k,
  middle: [(width - 1) / 2, (height - 1) / 2],
  unit: Math.max(1, Math.hypot(width, height) / 2),
});

/** Where a point of the picture would lie without the bow. */
export function straightened({ k, middle, unit }: Bow, [x, y]: Point): Point {
  const [dx, dy] = [x - middle[0], y - middle[1]];
  const by = 1 / (1 + (k * (dx * dx + dy * dy)) / (unit * unit));
  return [middle[0] + dx * by, middle[1] + dy * by];
}

/** Where the picture shows a point that would lie here without the bow; the way back of `straightened`. */
export function bowed(bow: Bow, [x, y]: Point): Point {
  const { middle } = bow;
  const [dx, dy] = [x - middle[0], y - middle[1]];
  const by = bowedShare(bow.k / (bow.unit * bow.unit), dx * dx + dy * dy);
  return [middle[0] + dx * by, middle[1] + dy * by];
}

/**
 * Distance from the middle with the bow over that without, `k` per square pixel: the smaller root of
 * k r q^2 - q + r = 0 over r. Beyond the edge of what such a lens can show, that edge.
 */
export const bowedShare = (k: number, squared: number): number =>
  2 / (1 + Math.sqrt(Math.max(0, 1 - 4 * k * squared)));
