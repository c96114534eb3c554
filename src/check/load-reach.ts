import {
  both,
  createExplorer,
  type Explorer,
  type Flow,
  LIES,
  type NetId,
  type Sight,
  type Way,
} from "../circuit/index.ts";

/** What one end of a load can be connected to in some state of the machine. */
interface EndReach {
  readonly cubes: readonly (readonly number[])[];
  /** A module's pin, an untraced end or another load lies there: nobody can say. */
  readonly unknown: boolean;
}

export interface LoadReach {
  /** Some state feeds it, or what could is not known. */
  readonly canBeFed: boolean;
  /** Fed from one end, some state gives it a way back from the other. */
  readonly hasReturn: boolean;
}

/**
 * Whether anything can feed a load, and whether current can get back, with every module plugged in
 * and unknown. Null for a part that is wired to nothing yet: that is a loose end and nothing more.
 * `load` is the element as seen from its first end.
 */
export function loadReach(sight: Sight, load: Way): LoadReach | null {
  if (!sight.isWired(load.from) && !sight.isWired(load.to)) return null;
  const near = sight.netOf(load.from);
  if (near === undefined) return null;
  const explorer = createExplorer(sight, null);
  const ends = [near, load.far] as const;
  const feeds = ends.map((net) => endReach(explorer, net, "in", load));
  const returns = ends.map((net) => endReach(explorer, net, "out", load));
  const some = (reach: EndReach | undefined) =>
    reach !== undefined && (reach.unknown || reach.cubes.length > 0);
  const together = (feed: EndReach | undefined, back: EndReach | undefined) => {
    if (!feed || !back || !some(feed) || !some(back)) return false;
    if (feed.unknown || back.unknown) return true;
    return feed.cubes.some((a) => back.cubes.some((b) => both(a, b) !== null));
  };
  // A lamp of light-emitting diodes works one way round only: from its first pin to its second.
  const ways = load.element.law.is === "led" ? ([[0, 1]] as const) : BOTH_WAYS;
  const complete = ways.some(([from, to]) => together(feeds[from], returns[to]));
  const fed = ways.some(([from]) => some(feeds[from]));
  const returned = ways.some(([from, to]) => some(feeds[from]) && some(returns[to]));
  const grounded = ways.some(([, to]) => some(returns[to]));
  return {
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
  const { sight } = explorer;
  const { arrivals, bounded } = explorer.walk(net, flow);
  const wanted = flow === "in" ? "source" : "ground";
  const cubes = arrivals
    .filter(({ end, step }) => {
      return end.is === wanted && (flow === "in" || sight.leadsBackToBattery(step.net));
    })
    .map(({ cube }) => cube);
  const unknown =
    bounded ||
    // With batteries in series a load may lie between two of their taps.
    (flow === "out" && sight.hasRaisedMinus()) ||
    arrivals.some(({ end }) => end.is !== "source" && end.is !== "ground") ||
    (cubes.length === 0 && reachesThroughLoads(explorer, net, flow, load));
  return { cubes, unknown };
}

/** Whether the end can be fed or grounded, or meets something unknown, by way of other loads. */
function reachesThroughLoads(explorer: Explorer, start: NetId, flow: Flow, load: Way): boolean {
  const { sight } = explorer;
  const seen = new Set<NetId>([start]);
  for (const net of seen) {
    const lies = sight.lies(net);
    const live = (lies & LIES.batteryPlus) !== 0;
    const grounded = !live && (lies & (LIES.chassis | LIES.batteryMinus)) !== 0;
    if (flow === "in" ? live : grounded && sight.leadsBackToBattery(net)) return true;
    if (live || grounded) continue;
    if ((lies & (LIES.module | LIES.chargeSignal | LIES.untraced)) !== 0) return true;
    for (const way of sight.ways(net)) {
      if (way.element !== load.element && explorer.canPass(way, flow)) seen.add(way.far);
    }
  }
  return false;
}
