import { Groups, type Point } from "../../base/index.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";
import type { Branch } from "./branch.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";

/**
 * One place where lines meet as an eye sees it. Thinning makes two forks of a crossing that is not
 * quite square, and several of a dot: nodes so near to one another are one zone.
 */
export interface Zone {
  readonly at: Point;
  /** Pixels from its middle within which all ink belongs to it. */
  readonly radius: number;
  /** Radius in pixels of the largest disc of solid ink on its lines. */
  readonly blob: number;
  readonly nodes: readonly number[];
  /** What leaves it; short spurs that are only a blob's bumps left out. */
  readonly branches: readonly Branch[];
  /** Stretches that lie in it whole. */
  readonly inside: readonly number[];
}

/** In line widths: nodes nearer than that, their blobs added, are one place. */
const ONE_PLACE = 1;
/** In line widths: a spur must stick out of its zone so far to be a line. */
const STICKS_OUT = 1;

/** `lineEnds` are nodes where a line ends or goes on over a hole: no bump of a blob, however near. */
export function zonesOf(
  page: PreparedPage,
  skeleton: Skeleton,
  lineEnds: ReadonlySet<number>,
): Zone[] {
  const { nodes, stretches, width } = skeleton;
  const { lineWidth, far, spread } = page;
  const blob = nodes.map(({ pixels }) => {
    let most = 0;
    for (const at of pixels) most = Math.max(most, far[at] as number);
    return most / STEPS_PER_PIXEL;
  });
  const together = new Groups(nodes.length);
  const isFork = ({ stretches: ends }: SkeletonNode) => ends.length > 2;
  for (const { from, to, length } of stretches) {
    if (from === to || !isFork(nodes[from] as SkeletonNode) || !isFork(nodes[to] as SkeletonNode)) {
      continue;
    }
    const reach = Math.max(blob[from] as number, blob[to] as number) + ONE_PLACE * lineWidth;
    if (length <= reach) together.join(from, to);
  }
  const groups = new Map<number, number[]>();
  nodes.forEach((_, node) => {
    const root = together.of(node);
    const group = groups.get(root);
    if (group) group.push(node);
    else groups.set(root, [node]);
  });
  return [...groups.values()].map((members) => {
    const isMember = new Set(members);
    const at = middle(members.map((node) => nodes[node] as SkeletonNode));
    // Grain makes one place of a whole page: too many to be handed to Math.max at once.
    let radius = lineWidth / 2;
    let solid = 0;
    for (const node of members) {
      const { x, y } = nodes[node] as SkeletonNode;
      const around = blob[node] as number;
      radius = Math.max(radius, Math.hypot(x - at[0], y - at[1]) + around);
      solid = Math.max(solid, around);
    }
    const branches: Branch[] = [];
    const inside = new Set<number>();
    for (const node of members) {
      for (const number of new Set((nodes[node] as SkeletonNode).stretches)) {
        const stretch = stretches[number] as Stretch;
        if (isInside(stretch, isMember, at, radius + lineWidth, width)) inside.add(number);
        else if (
          !lineEnds.has(stretch.from === node ? stretch.to : stretch.from) &&
          isSpur(stretch, node, nodes, radius + STICKS_OUT * lineWidth, at)
        )
          inside.add(number);
        else {
          if (stretch.from === node) branches.push({ stretch: number, isFrom: true });
          if (stretch.to === node) branches.push({ stretch: number, isFrom: false });
        }
      }
    }
    for (const number of inside) {
      for (const at of (stretches[number] as Stretch).pixels) {
        solid = Math.max(solid, (far[at] as number) / STEPS_PER_PIXEL);
      }
    }
    // Distances count to the middle of the first pixel of paper, half a pixel too far.
    return {
      at,
      radius,
      blob: solid - 0.5 - spread,
      nodes: members,
      branches,
      inside: [...inside],
    };
  });
}

/** Both ends in the zone, and no pixel far from it. */
function isInside(
  { from, to, pixels }: Stretch,
  isMember: ReadonlySet<number>,
  [x, y]: Point,
  reach: number,
  width: number,
): boolean {
  if (!isMember.has(from) || !isMember.has(to)) return false;
  return pixels.every((at) => Math.hypot((at % width) - x, Math.floor(at / width) - y) <= reach);
}

/** An end of a line so near the zone that it is a bump of the ink there. */
function isSpur(
  { from, to }: Stretch,
  node: number,
  nodes: readonly SkeletonNode[],
  reach: number,
  [x, y]: Point,
): boolean {
  const other = nodes[from === node ? to : from] as SkeletonNode;
  const isFork = (nodes[node] as SkeletonNode).stretches.length > 2;
  return isFork && other.stretches.length === 1 && Math.hypot(other.x - x, other.y - y) <= reach;
}

function middle(nodes: readonly SkeletonNode[]): Point {
  let [x, y] = [0, 0];
  for (const node of nodes) {
    x += node.x;
    y += node.y;
  }
  return [x / nodes.length, y / nodes.length];
}
