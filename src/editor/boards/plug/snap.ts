import type { Point } from "../../../base/index.ts";

/** Pulls a dragged point into line with the nearest of the others, in x and in y apart. */
export function snapTo(point: Point, others: readonly Point[], reach: number): Point {
  const pulled = (axis: 0 | 1) => {
    let best = point[axis];
    let least = reach;
    for (const other of others) {
      const apart = Math.abs(other[axis] - point[axis]);
      if (apart < least) {
        best = other[axis];
        least = apart;
      }
    }
    return best;
  };
  return [pulled(0), pulled(1)];
}
