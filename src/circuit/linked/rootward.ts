/**
 * Which ways out of a net can lie on a path to a source (or to ground), whatever any contact does.
 *
 * Once a walk has come to a bus, only where the bus is fed from still matters, not the hundreds of
 * branches that hang on it. All sources are taken as one root. In the tree of the graph's
 * two-connected blocks (Hopcroft and Tarjan 1973, Algorithm 447) every simple path from a net to
 * the root stays in the blocks between the two, so a way that leads down into a block from that
 * block's own root can be left out without losing a path. Nets that are a source whatever any
 * switch does belong to the root itself: nothing is looked for beyond them. Linear in nets and
 * elements.
 */
import type { NetFacts } from "./facts.ts";
import type { Joined } from "./joined.ts";
import { gather } from "./lists.ts";
import { PASSES } from "./member.ts";
import type { Space } from "./space.ts";

interface Edges {
  /** Vertices of either end, edge by edge. */
  readonly ends: Int32Array;
  /** The way out of either end; −1 where current can't be followed that way round. */
  readonly ways: Int32Array;
  readonly count: number;
}

/** For each way, 1 where it leads towards the root or sideways, never down. */
export function rootwardWays(
  joined: Joined,
  facts: NetFacts,
  flow: "in" | "out",
  kept: Space,
  scratch: Space,
): Uint8Array {
  const allowed = kept.flags(joined.far.length);
  const root = joined.size;
  const edges = edgesOf(joined, facts, flow, root, scratch);
  forEachBlockEdge(root, edges, scratch, (edge, top) => {
    for (let side = 2 * edge; side < 2 * edge + 2; side++) {
      const way = edges.ways[side] as number;
      if (way >= 0 && edges.ends[side] !== top) allowed[way] = 1;
    }
  });
  return allowed;
}

function edgesOf(
  joined: Joined,
  facts: NetFacts,
  flow: "in" | "out",
  root: number,
  scratch: Space,
): Edges {
  const { elements, netOf, size } = joined;
  const { a, b, passes, order } = elements;
  const inlets = flow === "in" ? elements.inletPlus : elements.inletMinus;
  const most = order.length + size;
  const ends = scratch.unset(2 * most);
  const ways = scratch.unset(2 * most);
  let count = 0;
  const fixed = flow === "in" ? facts.source : facts.ground;
  const may = flow === "in" ? facts.mayFeed : facts.mayGround;
  const vertexOf = (pin: number) => {
    const net = netOf[pin] as number;
    return (fixed[net] as number) >= 0 ? root : net;
  };
  const push = (a: number, b: number, wayA: number, wayB: number) => {
    if (a === b) return;
    ends[2 * count] = a;
    ends[2 * count + 1] = b;
    ways[2 * count] = wayA;
    ways[2 * count + 1] = wayB;
    count++;
  };
  for (let net = 0; net < size; net++) {
    if (netOf[net] === net && may[net] && (fixed[net] as number) < 0) push(root, net, -1, -1);
  }
  for (let at = 0; at < order.length; at++) {
    const number = order[at] as number;
    const way = 2 * number;
    switch (passes[number]) {
      case PASSES.either:
      case PASSES.relay:
      case PASSES.diode:
        push(vertexOf(a[number] as number), vertexOf(b[number] as number), way, way + 1);
        break;
      case PASSES.fed: {
        const inlet = inlets[number] as number;
        if (inlet < 0) break;
        if (flow === "in") push(vertexOf(a[number] as number), vertexOf(inlet), way, -1);
        else push(vertexOf(b[number] as number), vertexOf(inlet), way + 1, -1);
      }
    }
  }
  return { ends: ends.subarray(0, 2 * count), ways, count };
}

/**
 * Visits every edge of the root's component with the vertex of its block that lies nearest the
 * root. Depth first with a stack of its own: a machine's diagram is deeper than the call stack.
 */
function forEachBlockEdge(
  root: number,
  { ends, count }: Edges,
  scratch: Space,
  visit: (edge: number, top: number) => void,
): void {
  const vertices = root + 1;
  const edgeOf = scratch.unset(2 * count);
  for (let side = 0; side < 2 * count; side++) edgeOf[side] = side >> 1;
  const { start, list: at } = gather(vertices, ends, edgeOf, scratch);
  const next = scratch.unset(vertices);
  next.set(start.subarray(0, vertices));
  const found = scratch.unset(vertices).fill(-1);
  const low = scratch.unset(vertices);
  const seen = scratch.flags(count);
  const open = scratch.unset(count);
  const path = scratch.unset(vertices);
  const by = scratch.unset(vertices);
  let opened = 0;
  let depth = 0;
  let order = 0;
  path[0] = root;
  found[root] = low[root] = order++;
  while (depth >= 0) {
    const vertex = path[depth] as number;
    const place = next[vertex] as number;
    if (place < (start[vertex + 1] as number)) {
      next[vertex] = place + 1;
      const edge = at[place] as number;
      if (seen[edge]) continue;
      seen[edge] = 1;
      const other = (ends[2 * edge] === vertex ? ends[2 * edge + 1] : ends[2 * edge]) as number;
      open[opened++] = edge;
      if (found[other] === -1) {
        found[other] = low[other] = order++;
        depth++;
        path[depth] = other;
        by[depth] = edge;
      } else low[vertex] = Math.min(low[vertex] as number, found[other] as number);
      continue;
    }
    const entered = by[depth] as number;
    depth--;
    if (depth < 0) break;
    const parent = path[depth] as number;
    low[parent] = Math.min(low[parent] as number, low[vertex] as number);
    if ((low[vertex] as number) < (found[parent] as number)) continue;
    while (opened > 0) {
      const edge = open[--opened] as number;
      visit(edge, parent);
      if (edge === entered) break;
    }
  }
}
