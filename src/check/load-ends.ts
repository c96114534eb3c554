import {
  both,
  type Explorer,
  type Flow,
  type NetId,
  raisedMinuses,
  type Way,
} from "../circuit/index.ts";
import type { Part } from "../job/index.ts";
import { leadsBackToBattery } from "./way-back.ts";

/** What one end of a load can be connected to in some state of the machine. */
interface EndReach {
  readonly cubes: readonly (readonly number[])[];
  /** A module's pin, an untraced end or another load lies there: nobody can say. */
  readonly unknown: boolean;
}

export interface LoadReach {
  readonly part: Part;
  /** Some state feeds it, or what could is not known. */
  readonly canBeFed: boolean;
  /** Fed from one end, some state gives it a way back from the other. */
  readonly hasReturn: boolean;
}

const known = new WeakMap<Explorer, readonly LoadReach[]>();

/** Whether anything can feed each load of the circuit, and whether current can get back. */
export function loadReaches(explorer: Explorer): readonly LoadReach[] {
  const found = known.get(explorer) ?? findLoadReaches(explorer);
  known.set(explorer, found);
  return found;
}

function findLoadReaches(explorer: Explorer): readonly LoadReach[] {
  const { network } = explorer;
  const reaches: LoadReach[] = [];
  for (const [index, net] of network.nets.entries()) {
    for (const way of net.ways) {
      const { is } = way.element.law;
      const part = network.parts.get(way.element.part);
      if (!part || !way.forward || (is !== "load" && is !== "coil" && is !== "led")) continue;
      // A part that is wired to nothing yet is a loose end and nothing more.
      const drawn = [way.from, way.to].some((pin) => (network.hops.get(pin)?.length ?? 0) > 0);
      if (drawn) reaches.push(reachOf(explorer, part, way, index));
    }
  }
  return reaches;
}

function reachOf(explorer: Explorer, part: Part, way: Way, nearNet: NetId): LoadReach {
  const ends = [nearNet, way.far] as const;
  const feeds = ends.map((net) => endReach(explorer, net, "in", way));
  const returns = ends.map((net) => endReach(explorer, net, "out", way));
  const some = (reach: EndReach | undefined) =>
    reach !== undefined && (reach.unknown || reach.cubes.length > 0);
  const together = (feed: EndReach | undefined, back: EndReach | undefined) => {
    if (!feed || !back || !some(feed) || !some(back)) return false;
    if (feed.unknown || back.unknown) return true;
    return feed.cubes.some((a) => back.cubes.some((b) => both(a, b) !== null));
  };
  // A lamp of light-emitting diodes works one way round only: from its first pin to its second.
  const ways = way.element.law.is === "led" ? ([[0, 1]] as const) : BOTH_WAYS;
  const complete = ways.some(([from, to]) => together(feeds[from], returns[to]));
  const fed = ways.some(([from]) => some(feeds[from]));
  const returned = ways.some(([from, to]) => some(feeds[from]) && some(returns[to]));
  const grounded = ways.some(([, to]) => some(returns[to]));
  return {
    part,
    // Fed and grounded, but never at the same time: no position can feed it.
    canBeFed: fed && (complete || !returned),
    hasReturn: complete || returned || (!fed && grounded),
  };
}

const BOTH_WAYS = [
  [0, 1],
  [1, 0],
] as const;

function endReach(explorer: Explorer, net: NetId, flow: Flow, load: Way): EndReach {
  const { arrivals, bounded } = explorer.walk(net, flow);
  const wanted = flow === "in" ? "source" : "ground";
  const { network } = explorer;
  const cubes = arrivals
    .filter(({ end, step }) => {
      return end.is === wanted && (flow === "in" || leadsBackToBattery(network, step.net));
    })
    .map(({ cube }) => cube);
  const unknown =
    bounded ||
    // With batteries in series a load may lie between two of their taps.
    (flow === "out" && raisedMinuses(network).size > 0) ||
    arrivals.some(({ end }) => end.is !== "source" && end.is !== "ground") ||
    (cubes.length === 0 && reachesThroughLoads(explorer, net, flow, load));
  return { cubes, unknown };
}

/** Whether the end can be fed or grounded, or meets something unknown, by way of other loads. */
function reachesThroughLoads(explorer: Explorer, start: NetId, flow: Flow, load: Way): boolean {
  const seen = new Set<NetId>([start]);
  const queue: NetId[] = [start];
  for (const net of queue) {
    const here = explorer.network.nets[net];
    if (!here) continue;
    const has = (terminal: string) => here.terminals.some((one) => one.terminal === terminal);
    const live = has("battery-plus");
    const grounded = !live && (has("chassis") || has("battery-minus"));
    const back = flow === "in" ? live : grounded && leadsBackToBattery(explorer.network, net);
    if (back) return true;
    if (live || grounded) continue;
    if (has("module") || has("charge-signal")) return true;
    if (here.terminals.some((one) => explorer.network.untraced.has(one.pin))) return true;
    for (const way of here.ways) {
      if (way.element === load.element || seen.has(way.far)) continue;
      if (!explorer.canPass(way, flow)) continue;
      seen.add(way.far);
      queue.push(way.far);
    }
  }
  return false;
}
