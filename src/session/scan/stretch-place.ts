import { distance, type Point } from "../../base/index.ts";
import { lengthOf, nearestOnLine, pointAlong } from "../diagram/polyline.ts";
import { stretchAt } from "./doubtful-places.ts";
import type { WholeNet } from "./whole-net.ts";

/** Places that are looked at along a stretch, at most. */
const MOST = 200;

/**
 * The place by which a stretch of a net's line is told from every other line, the nearest to `at`. Its end may
 * lie on a line that it only crosses, as the rim of a cup does on a wire: said there, it would be said of that
 * line. `clear`: pixels that it keeps from other lines, where anything of the stretch does.
 */
export function ownPlaceOf(
  net: WholeNet,
  at: Point,
  nets: readonly WholeNet[],
  clear: number,
): Point {
  const stretch = stretchAt(net, at);
  if (!stretch) return at;
  const others = [net, ...nets.filter(({ id }) => id !== net.id)]
    .flatMap(({ runs }) => runs)
    .filter((run) => run !== stretch);
  const roomAt = (p: Point) =>
    others.reduce(
      (least, { points }) => Math.min(least, nearestOnLine(points, p)?.distance ?? Infinity),
      clear,
    );
  const { points } = stretch;
  const length = lengthOf(points);
  const step = Math.max(1, clear / 2, length / MOST);
  let best = { at, room: roomAt(at), away: 0 };
  for (let along = step / 2; along < length; along += step) {
    const spot = pointAlong(points, along)?.at;
    if (!spot) continue;
    const [room, away] = [roomAt(spot), distance(spot, at)];
    if (room > best.room || (room === best.room && away < best.away))
      best = { at: spot, room, away };
  }
  return best.at;
}
