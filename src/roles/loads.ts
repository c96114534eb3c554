import type { Arrival, Cube, End, Explorer, Flow, NetId, Step, Way } from "../circuit/index.ts";
import { both, covers } from "../circuit/index.ts";
import type { PinRef } from "../job/index.ts";
import type { Leg } from "./sighting.ts";

/** What kind of thing a way through a part is, for the role of whoever looks through it. */
export type Passage = "load" | "resistor" | "sender" | "track" | "wiper";

/** Somewhere that a path through one or more loads comes to. */
export interface LoadPath {
  readonly passages: readonly Passage[];
  readonly first: Way;
  /** Null where nothing lies beyond. */
  readonly end: End | null;
  readonly cube: Cube;
  readonly legs: readonly Leg[];
  readonly endPin: PinRef | null;
}

/** Loads in series past this are not followed further. */
const MOST_IN_SERIES = 4;

/** How a way is passed by current of this direction as seen from its near end; null: not at all. */
export function passageOf(way: Way, flow: Flow): Passage | null {
  switch (way.element.law.is) {
    case "load":
    case "coil":
      return "load";
    case "led":
      return way.forward === (flow === "out") ? "load" : null;
    case "resistor":
    case "sender":
    case "track":
    case "wiper":
      return way.element.law.is;
    default:
      return null;
  }
}

/** Follows every load that hangs on the stretch around `start` to where current could come from or go. */
export function loadPaths(
  explorer: Explorer,
  start: NetId,
  flow: Flow,
  ownPin: PinRef,
): readonly LoadPath[] {
  const paths: LoadPath[] = [];
  const near = explorer.walk(start, flow);
  const home = new Map(near.steps.map((step) => [step.net, step.cube]));
  /** Bridged by what is closed whenever the load is seen at all, it is nothing to this pin. */
  const isBridged = (far: NetId, cube: Cube) => {
    const nearby = home.get(far);
    return nearby !== undefined && covers(nearby, cube);
  };
  const follow = (
    steps: readonly Step[],
    sofar: {
      readonly passages: readonly Passage[];
      readonly cube: Cube;
      readonly legs: readonly Leg[];
    },
    first: Way | null,
    crossed: ReadonlySet<Way["element"]>,
    visited: ReadonlySet<NetId>,
  ) => {
    for (const step of steps) {
      if (step.net !== start && isBus(explorer, step.net)) continue;
      for (const way of explorer.sight.ways(step.net)) {
        if (way.element.part === explorer.judged) continue;
        const passage = passageOf(way, flow);
        if (!passage || crossed.has(way.element)) continue;
        const cube = both(sofar.cube, step.cube);
        if (!cube || visited.has(way.far) || isBridged(way.far, cube)) continue;
        const next = {
          passages: [...sofar.passages, passage],
          cube,
          legs: [...sofar.legs, { step, through: way }],
        };
        land(way, next, first ?? way, new Set([...crossed, way.element]), visited);
      }
    }
  };
  const land = (
    way: Way,
    sofar: {
      readonly passages: readonly Passage[];
      readonly cube: Cube;
      readonly legs: readonly Leg[];
    },
    first: Way,
    crossed: ReadonlySet<Way["element"]>,
    visited: ReadonlySet<NetId>,
  ) => {
    const against: Flow = flow === "in" ? "out" : "in";
    const isRail = explorer.isRail(way.far, flow);
    if (!isRail && explorer.isRail(way.far, against)) return;
    const beyond = explorer.walk(way.far, flow);
    let found = false;
    for (const arrival of beyond.arrivals) {
      if (arrival.end.pin === ownPin || !matters(arrival, isRail)) continue;
      const cube = both(sofar.cube, arrival.cube);
      if (!cube) continue;
      found = true;
      paths.push({
        passages: sofar.passages,
        first,
        end: arrival.end,
        cube,
        legs: [...sofar.legs, { step: arrival.step, through: null }],
        endPin: arrival.end.pin,
      });
    }
    if (found) return;
    const before = paths.length;
    if (sofar.passages.length < MOST_IN_SERIES) {
      const seen = new Set([...visited, ...beyond.steps.map((step) => step.net)]);
      follow(beyond.steps, sofar, first, crossed, seen);
    }
    if (paths.length === before) {
      paths.push({ ...sofar, first, end: null, endPin: null });
    }
  };
  follow(near.steps, { passages: [], cube: [], legs: [] }, null, new Set(), new Set());
  return paths;
}

/** Loads on a bus belong to the bus, not to whoever is fed from it. */
const isBus = (explorer: Explorer, net: NetId) =>
  explorer.isRail(net, "in") || explorer.isRail(net, "out");

/** On a bus only its source or ground counts, not who else hangs on it. */
const matters = (arrival: Arrival, isRail: boolean) =>
  !isRail || arrival.end.is === "source" || arrival.end.is === "ground";
