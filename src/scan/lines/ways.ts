import type { Point } from "../../base/index.ts";
import { type Branch, bendBetween, placesAlong } from "./branch.ts";
import type { Gap } from "./gaps.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";

/** Degrees that a line may turn where it goes on through a fork. */
const GOES_ON = 40;
/** A way passes so many forks and holes at most: letters on a line are no more. */
const MOST = 12;

/** Lines as they go on beyond their own stretch: through what meets them, and over holes in the print. */
export interface Ways {
  /**
   * Places along a branch and what it goes on in, straight on at forks, for so many pixels at least. None
   * beyond the first that lies farther than `reach` from `origin`: nobody looks so far.
   */
  along(branch: Branch, length: number, origin: Point, reach: number): Point[];
}

export function waysOf(skeleton: Skeleton, gaps: readonly Gap[]): Ways {
  const { nodes, stretches } = skeleton;
  const overHole = new Map<number, Branch>();
  for (const { ends, isSure } of gaps) {
    if (!isSure) continue;
    for (const [end, other] of [ends, [ends[1], ends[0]]] as const) {
      const { from } = stretches[other.stretch] as Stretch;
      overHole.set(end.node, { stretch: other.stretch, isFrom: from === other.node });
    }
  }
  const goesOn = (branch: Branch, points: readonly Point[]): Branch | null => {
    const { from, to } = stretches[branch.stretch] as Stretch;
    const number = branch.isFrom ? to : from;
    const node = nodes[number] as SkeletonNode;
    if (node.stretches.length < 2) return overHole.get(number) ?? null;
    const came = directionOf(points.slice(-TAIL).concat([[node.x, node.y]]));
    if (!came) return null;
    let best: { branch: Branch; bend: number } | null = null;
    for (const stretch of new Set(node.stretches)) {
      if (stretch === branch.stretch) continue;
      const next = { stretch, isFrom: (stretches[stretch] as Stretch).from === number };
      const places = placesAlong(skeleton, next, TAIL);
      if (places.length < TAIL) places.push(endOf(skeleton, next));
      const ahead = directionOf([[node.x, node.y], ...places]);
      if (!ahead) continue;
      const bend = bendBetween([-came[0], -came[1]], ahead);
      if (bend <= GOES_ON && (best === null || bend < best.bend)) best = { branch: next, bend };
    }
    return best?.branch ?? null;
  };
  return {
    along(branch, length, origin, reach) {
      const points: Point[] = [];
      const seen = new Set<number>();
      let [at, left]: [Branch, number] = [branch, length];
      for (let n = 0; n <= MOST; n++) {
        if (!addPlaces(skeleton, at, points, origin, reach)) break;
        seen.add(at.stretch);
        left -= (stretches[at.stretch] as Stretch).length;
        if (left <= 0 || n === MOST) break;
        const next = goesOn(at, points);
        if (!next || seen.has(next.stretch)) break;
        at = next;
      }
      return points;
    },
  };
}

/** Adds the places of a branch, up to the first that is out of reach: false where there is one. */
function addPlaces(
  { stretches, width }: Skeleton,
  { stretch, isFrom }: Branch,
  points: Point[],
  [originX, originY]: Point,
  reach: number,
): boolean {
  const { pixels } = stretches[stretch] as Stretch;
  const far = reach * reach * (1 + 1e-9);
  for (let n = 0; n < pixels.length; n++) {
    const at = pixels[isFrom ? n : pixels.length - 1 - n] as number;
    const x = at % width;
    const y = (at - x) / width;
    points.push([x, y]);
    if ((x - originX) ** 2 + (y - originY) ** 2 > far) return false;
  }
  return true;
}

/** Pixels of a line's end that tell its direction at a fork. */
const TAIL = 10;

function endOf({ nodes, stretches }: Skeleton, { stretch, isFrom }: Branch): Point {
  const { from, to } = stretches[stretch] as Stretch;
  const { x, y } = nodes[isFrom ? to : from] as SkeletonNode;
  return [x, y];
}

function directionOf(points: readonly Point[]): Point | null {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return null;
  const length = Math.hypot(last[0] - first[0], last[1] - first[1]);
  return length === 0 ? null : [(last[0] - first[0]) / length, (last[1] - first[1]) / length];
}
