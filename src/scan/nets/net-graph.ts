import { addTo, distance, type Point } from "../../base/index.ts";
import type { FollowedPage } from "../lines/follow.ts";
import type { SkeletonNode, Stretch } from "../lines/skeleton.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { type Chain, type Crossing, chainsOf, endOf, type StretchEnd } from "./chains.ts";

/** A node of a net while its lines are put in order; in pixels of the prepared page. */
export interface GraphNode {
  readonly at: Point;
  /** Pixels round it in which lines lie askew. */
  readonly radius: number;
  /** Whether a line ends here in the open, and nothing meets it. */
  isFree: boolean;
  readonly terminals: string[];
}

/** A line between two nodes. */
export interface GraphRun {
  readonly from: GraphNode;
  readonly to: GraphNode;
  /** Places of the prepared page in order. */
  readonly places: readonly number[];
  readonly crossings: readonly Crossing[];
}

export interface NetGraph {
  /** As `followLines` numbers it. */
  readonly net: number;
  runs: readonly GraphRun[];
}

/** Where a terminal names a line: at one of its ends, or on its way. */
export interface Naming {
  readonly name: string;
  readonly stretch: number;
  /** The end that it names; else the place on the way, in pixels of the prepared page. */
  readonly where: { readonly end: StretchEnd } | { readonly at: Point };
}

/** In line widths: places of a line so near one another are one. */
const ONE_PLACE = 1.5;
/** Places of lines a slice. */
const PLACES = 100_000;
/** Joints a slice. */
const JUNCTIONS = 5_000;
/** Of a stretch that is in no chain. */
const NONE = -1;

/** The nets of a page as nodes and lines, as they were followed, with the terminals that name them. */
export function* netGraphs(
  followed: FollowedPage,
  lineWidth: number,
  namings: readonly Naming[],
): Sliced<NetGraph[]> {
  const { skeleton, links, netOf } = followed;
  const { width } = skeleton;
  const chains = yield* asPart(chainsOf(followed, lineWidth), 0, 0.6);
  const chainOf = new Int32Array(skeleton.stretches.length).fill(NONE);
  chains.forEach(({ stretches }, chain) => {
    for (const stretch of stretches) chainOf[stretch] = chain;
  });
  // By end of a stretch.
  const nodes: (GraphNode | undefined)[] = Array(2 * skeleton.stretches.length);
  const stops = new Map<number, { index: number; node: GraphNode }[]>();

  for (const [n, { at, radius, ends, bumps }] of links.junctions.entries()) {
    if (n % JUNCTIONS === JUNCTIONS - 1) yield 0.6 + (0.1 * n) / links.junctions.length;
    const node: GraphNode = { at, radius, isFree: false, terminals: [] };
    for (const branch of ends) nodes[endOf(branch)] = node;
    for (const bump of bumps) nodes[nearerEnd(bump, at)] = node;
  }
  for (const { end, stretch, at } of links.taps) {
    const node = nodeOnWay(stretch, at);
    if (!node) continue;
    node.isFree = false;
    nodes[endOf(end)] = node;
  }
  for (const { name, stretch, where } of namings) {
    const node = "end" in where ? nodeAtEnd(where.end) : nodeOnWay(stretch, where.at);
    node?.terminals.push(name);
  }
  yield 0.7;
  const graphs = new Map<number, GraphRun[]>();
  let told = 0;
  let copied = 0;
  for (let number = 0; number < chains.length; number++) {
    const chain = chains[number] as Chain;
    const net = netOf[chain.stretches[0] as number] as number;
    const runs = runsOf(chain, stops.get(number) ?? []);
    const known = graphs.get(net);
    if (known) for (const run of runs) known.push(run);
    else graphs.set(net, runs);
    copied += chain.places.length;
    if (copied - told < PLACES) continue;
    told = copied;
    yield 0.7 + (0.3 * number) / chains.length;
  }
  return [...graphs].map(([net, runs]) => ({ net, runs }));

  function placeOf(end: StretchEnd): Point {
    const { from, to } = skeleton.stretches[end >> 1] as Stretch;
    const { x, y } = skeleton.nodes[end % 2 === 0 ? from : to] as SkeletonNode;
    return [x, y];
  }

  function nearerEnd(stretch: number, at: Point): StretchEnd {
    const [from, to] = [2 * stretch, 2 * stretch + 1];
    return distance(placeOf(from), at) <= distance(placeOf(to), at) ? from : to;
  }

  function nodeAtEnd(end: StretchEnd): GraphNode {
    const known = nodes[end];
    if (known) return known;
    const node: GraphNode = { at: placeOf(end), radius: 0, isFree: true, terminals: [] };
    nodes[end] = node;
    return node;
  }

  /** A node on a line's way, or the one at its end or beside it on the way. */
  function nodeOnWay(stretch: number, at: Point): GraphNode | null {
    const number = chainOf[stretch] as number;
    if (number === NONE) return null;
    const { places, from, to, isRing } = chains[number] as Chain;
    let [index, far] = [-1, Number.POSITIVE_INFINITY];
    places.forEach((place, n) => {
      const away = Math.hypot((place % width) - at[0], Math.floor(place / width) - at[1]);
      if (away < far) [index, far] = [n, away];
    });
    const near = ONE_PLACE * lineWidth;
    if (!isRing) {
      for (const end of [from, to]) {
        const node = nodes[end];
        const reach = Math.max(near, node ? node.radius + 0.5 * lineWidth : 0);
        const away = distance(node?.at ?? placeOf(end), at);
        if (away <= reach || (index < 0 && end === from)) return nodeAtEnd(end);
      }
    }
    if (index < 0) return null;
    const beside = stops.get(number)?.find((stop) => Math.abs(stop.index - index) <= near);
    if (beside) return beside.node;
    const node: GraphNode = { at, radius: 0.5 * lineWidth, isFree: false, terminals: [] };
    addTo(stops, number, { index, node });
    return node;
  }

  function runsOf(
    { places, crossings, from, to, isRing }: Chain,
    onWay: readonly { index: number; node: GraphNode }[],
  ): GraphRun[] {
    const sorted = [...onWay].sort((a, b) => a.index - b.index);
    if (isRing) {
      const [first] = sorted;
      const index = first?.index ?? cornerOf(places, width);
      const at = places[index] ?? 0;
      const start: GraphNode = first?.node ?? {
        at: [at % width, Math.floor(at / width)],
        radius: 0,
        isFree: false,
        terminals: [],
      };
      const turned = [...places.slice(index), ...places.slice(0, index)];
      const turn = (of: number) => (of - index + places.length) % Math.max(1, places.length);
      const moved = crossings.map((crossing) => ({ ...crossing, index: turn(crossing.index) }));
      const others = sorted
        .slice(1)
        .map(({ node, ...stop }) => ({ node, index: turn(stop.index) }));
      return pieces(start, start, turned, moved, others);
    }
    return pieces(nodeAtEnd(from), nodeAtEnd(to), places, crossings, sorted);
  }
}

/** One run, cut at the nodes on its way. */
function pieces(
  from: GraphNode,
  to: GraphNode,
  places: readonly number[],
  crossings: readonly Crossing[],
  onWay: readonly { index: number; node: GraphNode }[],
): GraphRun[] {
  const cuts = [...onWay, { index: places.length, node: to }];
  let [start, node] = [0, from];
  return cuts.map((cut): GraphRun => {
    const run: GraphRun = {
      from: node,
      to: cut.node,
      places: places.slice(start, cut.index),
      crossings: crossings
        .filter(({ index }) => index >= start && index <= cut.index)
        .map(({ index, at }) => ({ index: index - start, at })),
    };
    [start, node] = [cut.index, cut.node];
    return run;
  });
}

/** The place of a ring that is farthest from its middle: a corner, if it has any. */
function cornerOf(places: readonly number[], width: number): number {
  let [x, y] = [0, 0];
  for (const at of places) {
    x += (at % width) / places.length;
    y += Math.floor(at / width) / places.length;
  }
  let [corner, most] = [0, -1];
  places.forEach((at, n) => {
    const far = Math.hypot((at % width) - x, Math.floor(at / width) - y);
    if (far > most) [corner, most] = [n, far];
  });
  return corner;
}
