import { addTo, Groups, type Point } from "../../base/index.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";
import type { Sliced } from "../sliced.ts";
import { type Branch, placesAlong } from "./branch.ts";
import { isRoughAround } from "./grain-around.ts";
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
  /** The middle of that disc. */
  readonly blobAt: Point;
  /** Pixels: as wide as its lines are beside it, if two of them are wider than the page's usual line. */
  readonly lineWidth: number;
  readonly nodes: readonly number[];
  /** What leaves it; short spurs that are only a blob's bumps left out. */
  readonly branches: readonly Branch[];
  /** Those of its branches, by stretch, that end at a part or go on over a hole: no letters' strokes. */
  readonly held: ReadonlySet<number>;
  /** Stretches that lie in it whole. */
  readonly inside: readonly number[];
  /** Whether more than two lines meet there on paper whose grain may have made some of them. */
  readonly isOnRoughPaper: boolean;
}

/** In line widths: nodes nearer than that, their blobs added, are one place. */
const ONE_PLACE = 1;
/** Thinning goes round a white spot: so many times as far as it is across. */
const ROUND = 1.5;
/** In line widths: a spur must stick out of its zone so far to be a line. */
const STICKS_OUT = 1;
/** In line widths: on so much of its lines beside it their width is measured. */
const MEASURED = 4;

/** Nodes looked at in a slice, and places where lines meet: the paper round each is measured. */
const SLICE = 10_000;
const FORKS = 200;

/** `lineEnds` are nodes where a line ends or goes on over a hole: no bump of a blob, however near. */
export function* zonesOf(
  page: PreparedPage,
  skeleton: Skeleton,
  lineEnds: ReadonlySet<number>,
): Sliced<Zone[]> {
  const { nodes, stretches } = skeleton;
  const { lineWidth, far } = page;
  const blobs = new Float64Array(nodes.length);
  for (let node = 0; node < nodes.length; node++) {
    let most = 0;
    for (const at of (nodes[node] as SkeletonNode).pixels) most = Math.max(most, far[at] as number);
    blobs[node] = most / STEPS_PER_PIXEL;
  }
  yield 0.1;
  const together = new Groups(nodes.length);
  for (const { from, to, length } of stretches) {
    if (from === to || !isFork(nodes[from] as SkeletonNode) || !isFork(nodes[to] as SkeletonNode)) {
      continue;
    }
    const solid = Math.max(blobs[from] as number, blobs[to] as number, lineWidth / 2);
    const reach = solid + ONE_PLACE * lineWidth;
    const [a, b] = [nodes[from] as SkeletonNode, nodes[to] as SkeletonNode];
    if (length <= ROUND * reach && Math.hypot(a.x - b.x, a.y - b.y) <= reach)
      together.join(from, to);
  }
  yield 0.2;
  const groups = new Map<number, number[]>();
  for (let node = 0; node < nodes.length; node++) {
    if (node % SLICE === SLICE - 1) yield 0.2 + (0.1 * node) / nodes.length;
    addTo(groups, together.of(node), node);
  }
  const zones: Zone[] = [];
  let [looked, forks] = [0, 0];
  for (const members of groups.values()) {
    const zone = new ZoneOfNodes(page, skeleton, lineEnds, members, blobs, together);
    // Grain makes one place of a whole page.
    for (let from = 0; from < members.length; from += SLICE) {
      const to = Math.min(members.length, from + SLICE);
      zone.look(from, to);
      looked += to - from;
      if (looked % SLICE < to - from) yield 0.3 + (0.7 * looked) / nodes.length;
    }
    const found = zone.found();
    zones.push(found);
    if (found.branches.length > 2 && ++forks % FORKS === 0)
      yield 0.3 + (0.7 * looked) / nodes.length;
  }
  return zones;
}

const isFork = ({ stretches }: SkeletonNode) => stretches.length > 2;

/** Nodes that are one zone, and what is found of it. */
class ZoneOfNodes {
  private readonly page: PreparedPage;
  private readonly skeleton: Skeleton;
  private readonly lineEnds: ReadonlySet<number>;
  private readonly members: readonly number[];
  private readonly together: Groups;
  private readonly root: number;
  private readonly at: Point;
  private readonly radius: number;
  /** Radius in pixels of the largest disc of ink, and its middle. */
  private solid = 0;
  private solidAt: Point;
  private readonly branches: Branch[] = [];
  private readonly inside = new Set<number>();

  constructor(
    page: PreparedPage,
    skeleton: Skeleton,
    lineEnds: ReadonlySet<number>,
    members: readonly number[],
    blobs: Float64Array,
    together: Groups,
  ) {
    [this.page, this.skeleton, this.lineEnds] = [page, skeleton, lineEnds];
    [this.members, this.together] = [members, together];
    this.root = together.of(members[0] as number);
    const { nodes } = skeleton;
    const at = middle(nodes, members);
    let radius = page.lineWidth / 2;
    this.solidAt = at;
    for (const node of members) {
      const { x, y } = nodes[node] as SkeletonNode;
      const around = blobs[node] as number;
      radius = Math.max(radius, Math.hypot(x - at[0], y - at[1]) + around);
      if (around > this.solid) [this.solid, this.solidAt] = [around, [x, y]];
    }
    [this.at, this.radius] = [at, radius];
  }

  /** Looks at what leaves some of its nodes. */
  look(first: number, last: number): void {
    const { members, skeleton, branches, inside } = this;
    for (let n = first; n < last; n++) {
      const node = members[n] as number;
      const met = (skeleton.nodes[node] as SkeletonNode).stretches;
      for (let k = 0; k < met.length; k++) {
        const number = met[k] as number;
        const { from, to } = skeleton.stretches[number] as Stretch;
        // One that begins and ends here stands twice.
        if (from === to && met.indexOf(number) < k) continue;
        if (this.isInside(number, node)) {
          inside.add(number);
          continue;
        }
        if (from === node) branches.push({ stretch: number, isFrom: true });
        if (to === node) branches.push({ stretch: number, isFrom: false });
      }
    }
  }

  found(): Zone {
    const { at, radius, branches, members, page, skeleton, lineEnds } = this;
    const { far, spread } = page;
    for (const number of this.inside) {
      const { pixels } = skeleton.stretches[number] as Stretch;
      for (let n = 0; n < pixels.length; n++) {
        const place = pixels[n] as number;
        const around = (far[place] as number) / STEPS_PER_PIXEL;
        if (around <= this.solid) continue;
        const x = place % skeleton.width;
        [this.solid, this.solidAt] = [around, [x, (place - x) / skeleton.width]];
      }
    }
    // Distances count to the middle of the first pixel of paper, half a pixel too far.
    const blob = this.solid - 0.5 - spread;
    const lineWidth = widthBeside(page, skeleton, branches, at, radius);
    const isOnRoughPaper = branches.length > 2 && isRoughAround(page, at);
    const isHeld = ({ stretch, isFrom }: Branch) => {
      const { from, to } = skeleton.stretches[stretch] as Stretch;
      return lineEnds.has(isFrom ? to : from);
    };
    const held = new Set(branches.filter(isHeld).map(({ stretch }) => stretch));
    const lines = { lineWidth, nodes: members, branches, held, inside: [...this.inside] };
    return { at, radius, blob, blobAt: this.solidAt, isOnRoughPaper, ...lines };
  }

  /** Whether a stretch that meets a node lies in the zone whole, or is a bump of its ink. */
  private isInside(number: number, node: number): boolean {
    const { at, radius, page, skeleton, lineEnds } = this;
    const stretch = skeleton.stretches[number] as Stretch;
    if (this.isWithin(stretch, radius + page.lineWidth)) return true;
    if (lineEnds.has(stretch.from === node ? stretch.to : stretch.from)) return false;
    return isSpur(stretch, node, skeleton.nodes, radius + STICKS_OUT * page.lineWidth, at);
  }

  /** Both ends in the zone, and no pixel far from it. */
  private isWithin({ from, to, pixels }: Stretch, reach: number): boolean {
    const { at, root, together, skeleton } = this;
    if (together.of(from) !== root || together.of(to) !== root) return false;
    const { width } = skeleton;
    for (let n = 0; n < pixels.length; n++) {
      const place = pixels[n] as number;
      const x = place % width;
      if (Math.hypot(x - at[0], (place - x) / width - at[1]) > reach) return false;
    }
    return true;
  }
}

/**
 * How wide the lines of a place are beside it, in pixels: the second widest of them, since a letter may
 * touch one, and the usual line at least.
 */
function widthBeside(
  { far, lineWidth, spread }: PreparedPage,
  skeleton: Skeleton,
  branches: readonly Branch[],
  [x, y]: Point,
  radius: number,
): number {
  if (branches.length < 3) return lineWidth;
  const { width } = skeleton;
  const most = Math.ceil(2 * (radius + MEASURED * lineWidth));
  const wide = branches.map((branch) => {
    const halves: number[] = [];
    for (const [px, py] of placesAlong(skeleton, branch, most)) {
      const away = Math.hypot(px - x, py - y) - radius;
      if (away < 0) continue;
      if (away > MEASURED * lineWidth) break;
      halves.push(far[py * width + px] as number);
    }
    // The nearest may lie in a dot whose middle is beside the place.
    const half = halves.sort((a, b) => a - b)[halves.length >> 2] ?? 0;
    return 2 * (half / STEPS_PER_PIXEL - 0.5 - spread);
  });
  return Math.max(lineWidth, wide.sort((a, b) => b - a)[1] ?? 0);
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

function middle(nodes: readonly SkeletonNode[], members: readonly number[]): Point {
  let [x, y] = [0, 0];
  for (const member of members) {
    const node = nodes[member] as SkeletonNode;
    x += node.x;
    y += node.y;
  }
  return [x / members.length, y / members.length];
}
