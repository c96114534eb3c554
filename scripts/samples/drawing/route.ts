import type { Point } from "../../../src/base/index.ts";

/** One leg of a line: across or down to a coordinate, or straight (aslant if need be) to a point. */
export type Leg = { readonly x: number } | { readonly y: number } | { readonly to: Point };

/** The corners between `from` and `to`, neither of them included. */
export function cornersOf(from: Point, to: Point, legs: readonly Leg[]): Point[] {
  const corners: Point[] = [];
  let [x, y] = from;
  for (const leg of legs) {
    if ("to" in leg) [x, y] = leg.to;
    else if ("x" in leg) x = leg.x;
    else y = leg.y;
    corners.push([x, y]);
  }
  const aslant = legs.some((leg) => "to" in leg);
  if (!aslant && Math.abs(x - to[0]) > 1e-6 && Math.abs(y - to[1]) > 1e-6) {
    throw new Error(`the last leg at ${x},${y} is not in line with ${to.join(",")}`);
  }
  return corners;
}
