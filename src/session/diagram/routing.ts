import type { Point } from "../../base/index.ts";

/** An end of a run to be drawn at right angles. */
export interface RouteEnd {
  readonly at: Point;
  /** The way a wire leaves here, outward; null where any way is as good. */
  readonly out: Point | null;
}

/** True when a straight run between the points would lie upon another wire. */
export type Occupied = (a: Point, b: Point) => boolean;

const FREE: Occupied = () => false;

/** Where the step of a run with two corners may lie, as a share of the way; the middle first. */
const STEPS = [1 / 2, 1 / 3, 2 / 3, 1 / 4, 3 / 4];

/** How far a wire runs straight out of a pin before it turns back, pixels. */
const STUB = 12;

/**
 * Corners of a run at right angles from `a` to `b`: the fewest that leave both ends the way they
 * face and lie upon no other wire. Empty when the two are in line.
 */
export function orthogonalCorners(a: RouteEnd, b: RouteEnd, occupied = FREE): Point[] {
  const [ax, ay] = a.at;
  const [bx, by] = b.at;
  const candidates: Point[][] = [[[bx, ay]], [[ax, by]]];
  for (const share of STEPS) {
    const x = Math.round(ax + (bx - ax) * share);
    const y = Math.round(ay + (by - ay) * share);
    candidates.push(
      [
        [x, ay],
        [x, by],
      ],
      [
        [ax, y],
        [bx, y],
      ],
    );
  }
  if (ax === bx || ay === by) candidates.unshift([]);
  for (const end of [a, b]) {
    if (!end.out) continue;
    const [x, y] = [end.at[0] + end.out[0] * STUB, end.at[1] + end.out[1] * STUB];
    const other = end === a ? b : a;
    // Out along the pin's own way first, then across to the other end.
    const around: Point[] =
      end.out[0] !== 0
        ? [
            [x, end.at[1]],
            [x, other.at[1]],
          ]
        : [
            [end.at[0], y],
            [other.at[0], y],
          ];
    candidates.push(end === a ? around : around.reverse());
  }
  let best = candidates[0] as Point[];
  let lowest = Number.POSITIVE_INFINITY;
  for (const corners of candidates) {
    const cost = costOf(a, corners, b, occupied);
    if (cost < lowest) {
      lowest = cost;
      best = corners;
    }
  }
  return best;
}

/** Two lines on one another can't be told apart: worse than a step or two more. */
const UPON_ANOTHER = 2.5;

function costOf(a: RouteEnd, corners: readonly Point[], b: RouteEnd, occupied: Occupied): number {
  const run = [a.at, ...corners, b.at];
  let cost = corners.length;
  cost += againstTheGrain(a, run[1] as Point) + againstTheGrain(b, run.at(-2) as Point);
  for (let i = 1; i < run.length; i++) {
    if (occupied(run[i - 1] as Point, run[i] as Point)) cost += UPON_ANOTHER;
  }
  return cost;
}

/** What it costs to leave an end the wrong way: sideways a little, back through the symbol a lot. */
function againstTheGrain(end: RouteEnd, next: Point): number {
  if (!end.out) return 0;
  const dx = next[0] - end.at[0];
  const dy = next[1] - end.at[1];
  const length = Math.hypot(dx, dy);
  // A corner on the end itself is no way out at all.
  if (length === 0) return 3;
  const along = (dx * end.out[0] + dy * end.out[1]) / length;
  if (along > 0.5) return 0;
  return along < -0.5 ? 6 : 1.5;
}
