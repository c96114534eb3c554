import type { Id, PartOf } from "../../job/index.ts";
import type { Sight } from "../linked/index.ts";
import type { NetId, Way } from "../nets.ts";
import { ALWAYS, both, type Condition, type Cube, covers } from "./conditions.ts";
import { type End, endsAt, railsAt } from "./ends.ts";
import { MOST_POSITIONS, positionBits, type Variables } from "./variables.ts";

/** Which way current would run as seen from the starting point. */
export type Flow = "in" | "out";

/** A net that the walk came to, under a condition, with the way back to the start. */
export interface Step {
  readonly net: NetId;
  readonly cube: Cube;
  readonly via: Way | null;
  readonly before: Step | null;
  /** Past a bus that is fed (or grounded) by itself: what else hangs on that bus is not seen. */
  readonly pastRail: boolean;
}

export interface Arrival {
  readonly end: End;
  /** Condition of the walk and of the end together. */
  readonly cube: Cube;
  readonly step: Step;
}

/** Everything that can be reached from a net without passing a load, and when. */
export interface Walk {
  readonly arrivals: readonly Arrival[];
  /** First step to each net, nearest first; nets past a rail left out. */
  readonly steps: readonly Step[];
  /** Too many conditions: the answer is not complete. */
  readonly bounded: boolean;
}

/** What a walk needs to know of the rest of the circuit. */
export interface Surroundings {
  readonly sight: Sight;
  readonly judged: Id | null;
  readonly variables: Variables;
  /** When an element conducts without being a load; null where a bound was reached. */
  conduction(way: Way, flow: Flow): Condition | null;
  /** Whether a net is fed (flow in) or grounded (flow out) by itself. */
  isRail(net: NetId, flow: Flow): boolean;
  /** Only what feeds (or grounds) the start is asked for, and nothing else that hangs about. */
  readonly railsOnly?: boolean;
  /** Goes on over feeds on its way to ground, as a search for shorts must. */
  readonly overFeeds?: boolean;
}

/** When a relay's contact is closed; null where a bound was reached. */
export type RelayContact = (relay: Id, closedWhen: "pulled" | "rested") => Condition | null;

const MOST_CUBES_PER_NET = 40;
const NEVER: Condition = [];
const FREELY: Condition = [ALWAYS];

/** The conduction of every element that does no work; loads, coils and the like never conduct here. */
export function plainConduction(
  sight: Sight,
  variables: Variables,
  relayContact: RelayContact,
  way: Way,
  flow: Flow,
): Condition | null {
  const { law, part } = way.element;
  switch (law.is) {
    case "protection":
      return FREELY;
    case "diode":
      // Leaving the start towards the far net, current must run from anode to cathode.
      return way.forward === (flow === "out") ? FREELY : NEVER;
    case "contact": {
      const owner = sight.part(part);
      if (owner?.kind !== "switch") return NEVER;
      if (owner.positions.length > MOST_POSITIONS) return null;
      const bits = positionBits(owner, law.closedIn);
      if (bits === 0) return NEVER;
      // An isolator counts as closed, as far as one position can close all of its contacts.
      if (law.control === "isolator" && closesTogether(owner)) return FREELY;
      const variable = variables.numberOf({ is: "switch", part: owner });
      return bits === variables.valuesOf(variable) ? FREELY : [[variable, bits]];
    }
    case "relay-contact":
      return relayContact(part, law.closedWhen);
    default:
      return NEVER;
  }
}

const closesTogether = (part: PartOf<"switch">): boolean =>
  part.positions.some((position) =>
    part.contacts.every((contact) => contact.closedIn.includes(position)),
  );

/** A converter passes its feed from its input to its output: the net that a walk goes on at. */
function throughConverter(sight: Sight, way: Way, flow: Flow): NetId | null {
  const { law, part } = way.element;
  if (law.is !== "source" || typeof law.live === "string") return null;
  const [plus, minus] = law.live.fedBy;
  if (way.forward && flow === "in") return sight.netOf(`${part}:${plus}`) ?? null;
  if (!way.forward && flow === "out") return sight.netOf(`${part}:${minus}`) ?? null;
  return null;
}

/** Walks outward from `start`, breadth first, keeping for each net its most general conditions. */
export function walkFrom(around: Surroundings, start: NetId, flow: Flow): Walk {
  const { sight } = around;
  const kept = new Map<NetId, Step[]>();
  const steps: Step[] = [];
  const arrivals: Arrival[] = [];
  let bounded = false;
  const queue: Step[] = [];

  const arrive = (step: Step) => {
    const known = kept.get(step.net);
    if (known?.some((one) => (step.pastRail || !one.pastRail) && covers(one.cube, step.cube)))
      return;
    if (known && known.length >= MOST_CUBES_PER_NET) {
      bounded = true;
      return;
    }
    if (!known && !step.pastRail) steps.push(step);
    if (known) {
      const stays = known.filter(
        (one) => !((one.pastRail || !step.pastRail) && covers(step.cube, one.cube)),
      );
      if (!step.pastRail && known.every((one) => one.pastRail)) steps.push(step);
      kept.set(step.net, [...stays, step]);
    } else kept.set(step.net, [step]);
    queue.push(step);
  };

  const pastRailAtStart = around.railsOnly ?? false;
  arrive({ net: start, cube: ALWAYS, via: null, before: null, pastRail: pastRailAtStart });
  for (let head = 0; head < queue.length; head++) {
    const step = queue[head] as Step;
    if (!kept.get(step.net)?.includes(step)) continue;
    const source = sight.source(step.net);
    const ground = sight.ground(step.net);
    const wantedPin = flow === "in" ? source : ground;
    if (wantedPin !== null) {
      // Of the many ground points of a net one is as good as another here.
      const end: End = { is: flow === "in" ? "source" : "ground", pin: wantedPin, cube: ALWAYS };
      arrivals.push({ end, cube: step.cube, step });
      continue;
    }
    // Current can't come out of a ground bus nor run into a fed one.
    const against = flow === "in" ? ground : source;
    if (against !== null && !around.overFeeds) continue;
    if (around.isRail(step.net, flow === "in" ? "out" : "in")) continue;
    const pastRail = step.pastRail || around.isRail(step.net, flow);
    if (!pastRail) {
      for (const end of endsAt(sight, step.net, around.judged))
        arrivals.push({ end, cube: step.cube, step });
    }
    if (flow === "in") {
      for (const end of railsAt(sight, step.net, around.variables)) {
        const cube = "cube" in end ? both(step.cube, end.cube) : step.cube;
        if (cube) arrivals.push({ end, cube, step });
      }
    }
    for (const way of pastRail ? sight.rootward(step.net, flow) : sight.ways(step.net)) {
      // The judged module is taken out, with all that it has inside.
      if (way.element.part === around.judged) continue;
      const beyond = throughConverter(sight, way, flow);
      if (beyond !== null) {
        arrive({ net: beyond, cube: step.cube, via: way, before: step, pastRail });
        continue;
      }
      const condition = around.conduction(way, flow);
      if (condition === null) {
        bounded = true;
        continue;
      }
      for (const cube of condition) {
        const joined = both(step.cube, cube);
        if (joined) arrive({ net: way.far, cube: joined, via: way, before: step, pastRail });
      }
    }
  }
  return { arrivals: pruneArrivals(arrivals), steps, bounded };
}

/** Leaves out arrivals at the same end that a more general condition makes needless. */
function pruneArrivals(arrivals: readonly Arrival[]): readonly Arrival[] {
  if (arrivals.length < 2) return arrivals;
  const byPin = new Map<string, Arrival[]>();
  for (const arrival of arrivals) {
    const key = `${arrival.end.is} ${arrival.end.pin}`;
    const same = byPin.get(key) ?? [];
    if (same.some((one) => covers(one.cube, arrival.cube))) continue;
    byPin.set(key, [...same.filter((one) => !covers(arrival.cube, one.cube)), arrival]);
  }
  const kept = new Set([...byPin.values()].flat());
  return arrivals.filter((arrival) => kept.has(arrival));
}

/** Whether current of this direction, seen from the near end, can pass at all in some state. */
export function passesCurrent(way: Way, flow: Flow): boolean {
  const { law } = way.element;
  if (law.is === "diode" || law.is === "led") return way.forward === (flow === "out");
  return law.is !== "source";
}
