/**
 * Which ways out of a net can lie on a path to a source (or to ground), whatever any contact does.
 *
 * Once a walk has come to a bus, only where the bus is fed from still matters, not the hundreds of
 * branches that hang on it. All sources are taken as one root. In the tree of the graph's
 * two-connected blocks (Hopcroft and Tarjan 1973, Algorithm 447) every simple path from a net to
 * the root stays in the blocks between the two, so a way that leads down into a block from that
 * block's own root can be left out without losing a path. Linear in nets and elements.
 */
import type { NetId, Network, Way } from "../nets.ts";
import { fixedEnds } from "./ends.ts";

/** For each net, its ways that lead towards the root or sideways, never down. */
export type RootwardWays = readonly (readonly Way[])[];

/** `in`: towards the sources. `out`: towards ground. */
export interface Rootward {
  readonly in: RootwardWays;
  readonly out: RootwardWays;
}

interface Edge {
  readonly ends: readonly [NetId, NetId];
  /** The way out of either end; null where current can't be followed that way round. */
  readonly ways: readonly [Way | null, Way | null];
}

const known = new WeakMap<Network, Rootward>();

export function rootwardWays(network: Network): Rootward {
  let found = known.get(network);
  if (!found) {
    found = { in: waysTowards(network, "in"), out: waysTowards(network, "out") };
    known.set(network, found);
  }
  return found;
}

function waysTowards(network: Network, flow: "in" | "out"): RootwardWays {
  const root = network.nets.length;
  const edges: Edge[] = [];
  const back = new Map(
    network.nets.flatMap((net) =>
      net.ways.filter((way) => !way.forward).map((way) => [way.element, way] as const),
    ),
  );
  for (const [id, net] of network.nets.entries()) {
    const { mayFeed, mayGround } = fixedEnds(network, net);
    if (flow === "in" ? mayFeed : mayGround) edges.push({ ends: [root, id], ways: [null, null] });
    for (const way of net.ways) pushEdge(network, flow, id, way, back, edges);
  }
  const allowed: Way[][] = network.nets.map(() => []);
  forEachBlockEdge(network.nets.length + 1, root, edges, (edge, top) => {
    for (const side of [0, 1] as const) {
      const from = edge.ends[side];
      const way = edge.ways[side];
      if (from !== top && way) allowed[from]?.push(way);
    }
  });
  return allowed;
}

function pushEdge(
  network: Network,
  flow: "in" | "out",
  id: NetId,
  way: Way,
  back: ReadonlyMap<Way["element"], Way>,
  edges: Edge[],
): void {
  const { law, part } = way.element;
  switch (law.is) {
    case "protection":
    case "contact":
    case "relay-contact":
    case "diode": {
      if (way.forward)
        edges.push({ ends: [id, way.far], ways: [way, back.get(way.element) ?? null] });
      return;
    }
    case "source": {
      if (typeof law.live === "string" || way.forward !== (flow === "in")) return;
      const inlet = network.netOf.get(`${part}:${law.live.fedBy[flow === "in" ? 0 : 1]}`);
      if (inlet !== undefined) edges.push({ ends: [id, inlet], ways: [way, null] });
    }
  }
}

/**
 * Visits every edge of the root's component with the vertex of its block that lies nearest the
 * root. Depth first with a stack of its own: a machine's diagram is deeper than the call stack.
 */
function forEachBlockEdge(
  vertices: number,
  root: number,
  edges: readonly Edge[],
  visit: (edge: Edge, top: number) => void,
): void {
  const at: number[][] = Array.from({ length: vertices }, () => []);
  for (const [index, { ends }] of edges.entries()) {
    if (ends[0] === ends[1]) continue;
    at[ends[0]]?.push(index);
    at[ends[1]]?.push(index);
  }
  const found = new Int32Array(vertices).fill(-1);
  const low = new Int32Array(vertices);
  const next = new Int32Array(vertices);
  const seen = new Uint8Array(edges.length);
  const open: number[] = [];
  const path: { readonly vertex: number; readonly by: number }[] = [{ vertex: root, by: -1 }];
  let count = 0;
  found[root] = low[root] = count++;
  while (path.length > 0) {
    const { vertex, by } = path[path.length - 1] as (typeof path)[number];
    const index = at[vertex]?.[next[vertex] ?? 0];
    if (index !== undefined) {
      next[vertex] = (next[vertex] ?? 0) + 1;
      if (seen[index]) continue;
      seen[index] = 1;
      const ends = (edges[index] as Edge).ends;
      const other = ends[0] === vertex ? ends[1] : ends[0];
      open.push(index);
      if (found[other] === -1) {
        found[other] = low[other] = count++;
        path.push({ vertex: other, by: index });
      } else low[vertex] = Math.min(low[vertex] ?? 0, found[other] ?? 0);
      continue;
    }
    path.pop();
    const parent = path.at(-1)?.vertex;
    if (parent === undefined) break;
    low[parent] = Math.min(low[parent] ?? 0, low[vertex] ?? 0);
    if ((low[vertex] ?? 0) < (found[parent] ?? 0)) continue;
    for (let edge = open.pop(); edge !== undefined; edge = open.pop()) {
      visit(edges[edge] as Edge, parent);
      if (edge === by) break;
    }
  }
}
