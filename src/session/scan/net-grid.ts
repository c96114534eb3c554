import {
  type Box,
  boxAt,
  distance,
  nearestOnSegment,
  type Point,
  type SpatialGrid,
  spatialGrid,
} from "../../base/index.ts";
import type { WholeNet } from "./whole-net.ts";

const CELL = 200;

/** Nets with their straight pieces sorted by place, so that pointing at one costs no look at all of them. */
export interface NetGrid {
  /** The net that passes nearest to a place, within `reach` pixels. */
  at(place: Point, reach: number): WholeNet | null;
}

export function netGrid(nets: readonly WholeNet[]): NetGrid {
  const pieces = nets.flatMap((net) =>
    net.runs.flatMap(({ points }) =>
      points.slice(1).map((b, place) => ({ net, a: points[place] as Point, b })),
    ),
  );
  const grid: SpatialGrid = spatialGrid(
    pieces.map(({ a, b }): Box => {
      return {
        left: Math.min(a[0], b[0]),
        top: Math.min(a[1], b[1]),
        right: Math.max(a[0], b[0]),
        bottom: Math.max(a[1], b[1]),
      };
    }),
    CELL,
  );
  return {
    at(at, reach) {
      let [best, nearest]: [WholeNet | null, number] = [null, reach];
      for (const index of grid.near(boxAt(at, reach))) {
        const { net, a, b } = pieces[index] as (typeof pieces)[number];
        const away = distance(at, nearestOnSegment(at, a, b));
        if (away <= nearest) [best, nearest] = [net, away];
      }
      return best;
    },
  };
}
