import {
  type Box,
  boxContains,
  countLeading,
  distance,
  growBox,
  type Point,
} from "../../base/index.ts";
import type { FollowedPage } from "../lines/follow.ts";
import type { Stretch } from "../lines/skeleton.ts";
import { NearStretches } from "../near-stretches.ts";
import { endOf } from "./chains.ts";
import type { Naming } from "./net-graph.ts";

/** In line widths: how far a line's end may be from the terminal that names it, ... */
const END = 6;
/** ... and its middle, in the open and beside a part, where lines run past. */
const WAY = 4;
const WAY_BESIDE_PART = 2.5;
/** In line widths: an end so near a part's box leaves that box, its outline left out. */
const LEAVES = 4;
/** Share of a box's size: a placed symbol seldom has exactly the size of the printed one. */
const ALONG = 1 / 3;
/** Share of a box's size: a terminal so near an edge is on that edge. */
const ON_EDGE = 0.25;
/** In line widths: two terminals so near one line's end may both be meant for it. */
const SHARED = 3;

type Edge = "left" | "top" | "right" | "bottom";
const EDGES: readonly Edge[] = ["left", "top", "right", "bottom"];

interface FreeEnd {
  readonly end: number;
  readonly stretch: number;
  readonly at: Point;
}

/**
 * Which line each terminal names: an end of one before the middle of one, and no two terminals the same
 * end while another is near. A terminal at a part takes the nearest line that leaves the part on that
 * side. What has no line near names none. All in pixels of the prepared page.
 */
export function namingsOf(
  followed: FollowedPage,
  terminals: Readonly<Record<string, Point>>,
  parts: readonly Box[],
  lineWidth: number,
): Naming[] {
  const ends = freeEnds(followed);
  const names = Object.keys(terminals);
  const wishes: Wish[] = [];
  const boxOf = new Map<string, Box>();
  const near = new EndsAcross(ends);
  for (const name of names) {
    const at = terminals[name] as Point;
    const box = partBoxAt(at, parts, 2 * lineWidth);
    if (box) boxOf.set(name, box);
    const [left, right] = reachAcross(at, box, lineWidth);
    for (const end of near.between(left, right)) {
      const direct = distance(end.at, at);
      let far = direct <= END * lineWidth ? direct : Number.POSITIVE_INFINITY;
      if (box) far = Math.min(far, farAlongEdge(at, end.at, box, lineWidth));
      if (far < Number.POSITIVE_INFINITY) wishes.push({ name, end, far, direct });
    }
  }
  wishes.sort((a, b) => a.far - b.far || a.direct - b.direct);
  // The nearest wish of each name that two terminals may share.
  const shares = new Map<string, Wish>();
  for (const wish of wishes) {
    if (wish.direct <= SHARED * lineWidth && !shares.has(wish.name)) shares.set(wish.name, wish);
  }
  const found = new Map<string, Naming>();
  const taken = new Set<number>();
  for (const { name, end } of wishes) {
    if (found.has(name) || taken.has(end.end)) continue;
    taken.add(end.end);
    found.set(name, { name, stretch: end.stretch, where: { end: end.end } });
  }
  let stretches: NearStretches | null = null;
  for (const name of names) {
    if (found.has(name)) continue;
    const at = terminals[name] as Point;
    const reach = (boxOf.has(name) ? WAY_BESIDE_PART : WAY) * lineWidth;
    stretches ??= new NearStretches(followed.skeleton);
    const way = nearestPlace(followed, stretches, at, reach);
    const shared = shares.get(name);
    if (way) found.set(name, { name, stretch: way.stretch, where: { at: way.at } });
    else if (shared) {
      const { stretch, end } = shared.end;
      found.set(name, { name, stretch, where: { end } });
    }
  }
  return names.flatMap((name) => found.get(name) ?? []);
}

/** An end that a terminal may name: how far it is, along a part's edge or straight, and straight. */
interface Wish {
  readonly name: string;
  readonly end: FreeEnd;
  readonly far: number;
  readonly direct: number;
}

/** From where to where, across the page, the ends lie that a terminal may name, and a pixel more. */
function reachAcross([x]: Point, box: Box | null, lineWidth: number): readonly [number, number] {
  const reach = END * lineWidth + 1;
  const [left, right] = [x - reach, x + reach];
  if (!box) return [left, right];
  const around = growBox(box, LEAVES * lineWidth + 1);
  return [Math.min(left, around.left), Math.max(right, around.right)];
}

/** Free ends from left to right. */
class EndsAcross {
  private readonly ends: readonly FreeEnd[];
  private readonly order: ReadonlyMap<FreeEnd, number>;

  constructor(ends: readonly FreeEnd[]) {
    this.order = new Map(ends.map((end, n) => [end, n]));
    this.ends = [...ends].sort((a, b) => a.at[0] - b.at[0]);
  }

  /** Those between two columns of the page, in the order in which they were given. */
  between(left: number, right: number): FreeEnd[] {
    const first = countLeading(this.ends, ({ at }) => at[0] < left);
    const beyond = countLeading(this.ends, ({ at }) => at[0] <= right);
    const orderOf = (end: FreeEnd) => this.order.get(end) as number;
    return this.ends.slice(first, beyond).sort((a, b) => orderOf(a) - orderOf(b));
  }
}

/** Ends of lines that nothing meets. */
function freeEnds({ skeleton, links }: FollowedPage): FreeEnd[] {
  const met = new Set<number>();
  for (const { ends } of [...links.passes, ...links.junctions]) {
    for (const branch of ends) met.add(endOf(branch));
  }
  for (const { end } of links.taps) met.add(endOf(end));
  return skeleton.nodes.flatMap((node, number): FreeEnd[] => {
    const [stretch, second] = node.stretches;
    if (stretch === undefined || second !== undefined || links.bumps.has(stretch)) return [];
    const end = 2 * stretch + ((skeleton.stretches[stretch] as Stretch).from === number ? 0 : 1);
    return met.has(end) ? [] : [{ end, stretch, at: [node.x, node.y] }];
  });
}

/** The smallest part that a place lies in, or at the edge of. */
function partBoxAt(at: Point, parts: readonly Box[], edge: number): Box | null {
  const sizeOf = ({ left, top, right, bottom }: Box) => (right - left) * (bottom - top);
  let best: Box | null = null;
  for (const box of parts) {
    if (!boxContains(growBox(box, edge), at)) continue;
    if (best === null || sizeOf(box) < sizeOf(best)) best = box;
  }
  return best;
}

/** Pixels from a terminal to the end of a line that leaves its part on the same edge; else infinity. */
function farAlongEdge(at: Point, end: Point, box: Box, lineWidth: number): number {
  const leaves = LEAVES * lineWidth;
  if (!boxContains(growBox(box, leaves), end)) return Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (const edge of edgesOf(at, box)) {
    const isUpright = edge === "left" || edge === "right";
    const across = isUpright ? end[0] : end[1];
    if (Math.abs(across - box[edge]) > leaves) continue;
    const size = isUpright ? box.bottom - box.top : box.right - box.left;
    const far = isUpright ? Math.abs(end[1] - at[1]) : Math.abs(end[0] - at[0]);
    if (far <= Math.max(END * lineWidth, ALONG * size)) least = Math.min(least, far);
  }
  return least;
}

/** Edges of a part that a terminal is on: one, two in a corner, all four deep inside. */
function edgesOf(at: Point, box: Box): readonly Edge[] {
  const near = EDGES.filter((edge) => {
    const isUpright = edge === "left" || edge === "right";
    const size = isUpright ? box.right - box.left : box.bottom - box.top;
    return Math.abs(at[isUpright ? 0 : 1] - box[edge]) <= ON_EDGE * size;
  });
  return near.length > 0 ? near : EDGES;
}

/** The place of a line nearest to a point, both pixels of the prepared page; null beyond `reach`. */
function nearestPlace(
  { skeleton, links }: FollowedPage,
  near: NearStretches,
  [x, y]: Point,
  reach: number,
): { stretch: number; at: Point } | null {
  const { width } = skeleton;
  let best: { stretch: number; at: Point } | null = null;
  let nearest = reach;
  for (const stretch of near.around([x, y], reach)) {
    if (links.bumps.has(stretch)) continue;
    const { pixels } = skeleton.stretches[stretch] as Stretch;
    for (let n = 0; n < pixels.length; ) {
      const place = pixels[n] as number;
      const at: Point = [place % width, Math.floor(place / width)];
      const far = Math.hypot(at[0] - x, at[1] - y);
      if (far <= nearest) [best, nearest] = [{ stretch, at }, far];
      // From pixel to pixel it is one step, a slanting one at most: so many are too far as well.
      n += Math.max(1, Math.floor((far - nearest) / 1.5));
    }
  }
  return best;
}
