import type { Id } from "../../job/index.ts";
import { HARD, LIES, type Sight } from "../linked/index.ts";
import type { NetId, Way } from "../nets.ts";
import { allOf, both, type Condition, type Cube, negate, withCube } from "./conditions.ts";
import { OWN_PIN, RELAY, type Variables } from "./variables.ts";
import type { Arrival, Flow, Walk } from "./walk.ts";

/** Past this many cubes a relay's state is a bound, and what hangs on it undecided. */
const MOST_CUBES = 64;

export interface RelayStates {
  /** When a contact of the relay is closed; null where a bound was reached. */
  contact(relay: Id, closedWhen: "pulled" | "rested"): Condition | null;
  /** When the coil is energised, with relays that hold themselves as variables; null past a bound. */
  energised(relay: Id): Condition | null;
  /** Something not known commands it: another module, or something not traced. */
  commandedByUnknown(relay: Id): boolean;
  /** Its state is not a plain function of the switches: it holds itself or latches. */
  holdsItself(relay: Id): boolean;
}

interface Energising {
  readonly when: Condition;
  readonly unknown: boolean;
}

/** `judged`: the module taken out, nothing inside which leads anywhere. */
export function createRelayStates(
  sight: Sight,
  judged: Id | null,
  variables: Variables,
  walk: (net: NetId, flow: Flow) => Walk,
  isRail: (net: NetId, flow: Flow) => boolean,
): RelayStates {
  const memo = new Map<Id, Energising | null>();

  const isLatching = (relay: Id) => {
    const part = sight.part(relay);
    return part?.kind === "relay" && part.latching === true;
  };
  const holdsItself = (relay: Id) => isLatching(relay) || sight.isInRing(relay);

  const variableOf = (relay: Id) => variables.numberOf({ is: "relay", part: relay });

  const energising = (relay: Id): Energising | null => {
    const known = memo.get(relay);
    if (known !== undefined) return known;
    const coil = sight.coil(relay);
    const answer = coil ? energisingOf(coil) : { when: [], unknown: false };
    memo.set(relay, answer);
    return answer;
  };

  const energisingOf = (coil: Way): Energising | null => {
    const nearNet = sight.netOf(coil.from);
    if (nearNet === undefined) return { when: [], unknown: false };
    const unknownCube: Cube = [variableOf(coil.element.part), RELAY.pulled];
    let when: Condition = [];
    let unknown = false;
    for (const [fed, grounded] of [
      [nearNet, coil.far],
      [coil.far, nearNet],
    ] as const) {
      const feed = side(fed, "in", coil, unknownCube);
      const back = side(grounded, "out", coil, unknownCube);
      if (!feed || !back) return null;
      const joined = allOf(feed.when, back.when, MOST_CUBES);
      if (!joined) return null;
      for (const cube of joined) when = withCube(when, cube);
      if (joined.length > 0) unknown ||= feed.unknown || back.unknown;
    }
    return when.length > MOST_CUBES ? null : { when, unknown };
  };

  /** When one end of a coil is fed or grounded. */
  const side = (net: NetId, flow: Flow, coil: Way, unknownCube: Cube): Energising | null => {
    const { arrivals, bounded } = walk(net, flow);
    if (bounded) return null;
    let when: Condition = [];
    let unknown = false;
    for (const arrival of arrivals) {
      const cube = endCube(arrival, flow, variables, unknownCube);
      if (!cube) continue;
      unknown ||= cube.unknown;
      when = withCube(when, cube.cube);
    }
    const notDrawn = (sight.lies(net) & LIES.alone) !== 0;
    // A fed bus is no way to ground, nor a ground bus a feed, whatever loads hang on it.
    const isHeld = isRail(net, flow === "in" ? "out" : "in");
    if (
      when.length === 0 &&
      !isHeld &&
      (notDrawn || mayBeReachedThroughLoads(sight, judged, net, flow, coil))
    ) {
      // Whether a coil pulls in through another load is a question of ohms, not of topology; and
      // of a coil that is not drawn further nobody knows what commands it.
      return { when: [unknownCube], unknown: true };
    }
    return { when, unknown };
  };

  return {
    contact: (relay, closedWhen) => {
      if (!sight.coil(relay)) return closedWhen === "rested" ? [[]] : [];
      if (isLatching(relay)) return [[variableOf(relay), RELAY[closedWhen]]];
      const found = energising(relay);
      if (!found) return null;
      // Its contact lying somewhere on the feed is not enough: only a coil whose own condition
      // asks for a relay's state has a memory.
      const asksForRelay = found.when.some((cube) =>
        cube.some((variable, i) => i % 2 === 0 && variables.at(variable).is === "relay"),
      );
      if (!holdsItself(relay) || !asksForRelay) {
        return closedWhen === "pulled"
          ? found.when
          : negate(found.when, variables.valuesOf, MOST_CUBES);
      }
      const variable = variableOf(relay);
      const state: Cube = [variable, RELAY[closedWhen]];
      const inThisState = found.when
        .map((cube) => both(cube, state))
        .filter((cube) => cube !== null);
      if (closedWhen === "pulled") return inThisState;
      const still = negate(inThisState, variables.valuesOf, MOST_CUBES);
      return still && allOf(still, [state], MOST_CUBES);
    },
    energised: (relay) => energising(relay)?.when ?? null,
    commandedByUnknown: (relay) => energising(relay)?.unknown ?? true,
    holdsItself,
  };
}

/** A cube for what a coil's end came to; null for what neither feeds nor grounds it. */
function endCube(
  { end, cube }: Arrival,
  flow: Flow,
  variables: Variables,
  unknownCube: Cube,
): { readonly cube: Cube; readonly unknown: boolean } | null {
  if (end.is === "source" || end.is === "ground") return { cube, unknown: false };
  if (end.is === "own-pin") {
    const pin = end.pin.slice(end.pin.indexOf(":") + 1);
    const variable = variables.numberOf({ is: "own-pin", pin });
    const driven = both(cube, [variable, flow === "in" ? OWN_PIN.high : OWN_PIN.low]);
    return driven && { cube: driven, unknown: false };
  }
  const commanded = both(cube, unknownCube);
  return commanded && { cube: commanded, unknown: true };
}

/** Whether anything at all could feed or ground a coil's end by way of other loads. */
function mayBeReachedThroughLoads(
  sight: Sight,
  judged: Id | null,
  start: NetId,
  flow: Flow,
  coil: Way,
): boolean {
  const fits = flow === "in" ? LIES.batteryPlus : LIES.chassis | LIES.batteryMinus;
  const seen = new Set<NetId>([start]);
  for (const net of seen) {
    const lies = sight.lies(net);
    if (net !== start && (lies & (fits | LIES.module | LIES.untraced)) !== 0) return true;
    if ((lies & HARD) !== 0) continue;
    for (const way of sight.ways(net)) {
      const isLeftOut = way.element === coil.element || way.element.part === judged;
      if (!isLeftOut && way.element.law.is !== "source") seen.add(way.far);
    }
  }
  return false;
}
