import type { Id, PinId } from "../../job/index.ts";
import type { Sight } from "../linked/index.ts";
import type { NetId, Way } from "../nets.ts";
import { allOf, type Condition, type Cube } from "./conditions.ts";
import { type Command, type Commanders, commandersOf, isPlainFeed } from "./controls.ts";
import { createRelayStates, type RelayStates } from "./relays.ts";
import { createVariables, RELAY, type Variables } from "./variables.ts";
import {
  type Arrival,
  type Flow,
  passesCurrent,
  plainConduction,
  type Surroundings,
  type Walk,
  walkFrom,
} from "./walk.ts";

/** Answers questions about one circuit as one module sees it, each worked out once. */
export interface Explorer {
  readonly sight: Sight;
  /** The module taken out; null for none: then every module is another module. */
  readonly judged: Id | null;
  readonly variables: Variables;
  readonly relays: RelayStates;
  walk(net: NetId, flow: Flow): Walk;
  /** Fed by itself (in) or grounded by itself (out): a bus, not a signal. */
  isRail(net: NetId, flow: Flow): boolean;
  /** Ways from a live net to ground that pass no load, each with a condition that can come about. */
  shorts(net: NetId): readonly Arrival[];
  /** Whether current of this direction can pass an element in some state, loads included. */
  canPass(way: Way, flow: Flow): boolean;
  /** When an element conducts without being a load; null where a bound was reached. */
  conduction(way: Way, flow: Flow): Condition | null;
  /** What commands a condition, relays that hold themselves followed to their own commands. */
  commands(cube: Cube): ReadonlySet<Command>;
  /** The same with the module's own pins, and whether a relay with a memory is among it. */
  trace(cube: Cube): Traced;
}

export interface Traced {
  readonly commands: ReadonlySet<Command>;
  readonly ownPins: ReadonlySet<PinId>;
  readonly hasMemory: boolean;
}

function merged(all: readonly Commanders[]): Commanders {
  return {
    commands: new Set(all.flatMap((one) => [...one.commands])),
    relays: [...new Set(all.flatMap((one) => one.relays))],
    ownPins: [...new Set(all.flatMap((one) => one.ownPins))],
  };
}

/** Past this many alternatives a condition is taken to be possible. */
const MOST_STATES = 256;

export function createExplorer(sight: Sight, judged: Id | null): Explorer {
  const variables = createVariables();
  const walks = { in: new Map<NetId, Walk>(), out: new Map<NetId, Walk>() };

  const walk = (net: NetId, flow: Flow): Walk => {
    let found = walks[flow].get(net);
    if (!found) {
      found = walkFrom(surroundings, net, flow);
      walks[flow].set(net, found);
    }
    return found;
  };

  const relays = createRelayStates(
    sight,
    judged,
    variables,
    (net, flow) => walkFrom(coilSurroundings, net, flow),
    (net, flow) => coilSurroundings.isRail(net, flow),
  );

  const directly = new Map<Id, Commanders>();
  const behind = (relay: Id): Commanders => {
    let found = directly.get(relay);
    if (!found) {
      found = merged((relays.energised(relay) ?? []).map((cube) => commandersOf(cube, variables)));
      directly.set(relay, found);
    }
    return found;
  };

  const trace = (cube: Cube): Traced => {
    const first = commandersOf(cube, variables);
    const commands = new Set(first.commands);
    const ownPins = new Set(first.ownPins);
    const waiting = [...first.relays];
    const seen = new Set(waiting);
    for (const relay of waiting) {
      if (relays.commandedByUnknown(relay)) commands.add("unknown");
      const more = behind(relay);
      for (const command of more.commands) commands.add(command);
      for (const pin of more.ownPins) ownPins.add(pin);
      for (const next of more.relays) {
        if (seen.has(next)) continue;
        seen.add(next);
        waiting.push(next);
      }
    }
    // Relays that only one another could pull in: nobody knows what started them.
    if (waiting.length > 0 && commands.size + ownPins.size === 0) commands.add("unknown");
    return { commands, ownPins, hasMemory: waiting.length > 0 };
  };
  const commands = (cube: Cube) => trace(cube).commands;

  const conductionWith =
    (contact: RelayStates["contact"]): Surroundings["conduction"] =>
    (way, flow) =>
      plainConduction(sight, variables, contact, way, flow);

  const plain = conductionWith((relay, closedWhen) => relays.contact(relay, closedWhen));

  /** Whether nets are buses, each worked out once, with the given idea of what conducts. */
  const railFinder = (conduction: Surroundings["conduction"]) => {
    const known = { in: new Map<NetId, boolean>(), out: new Map<NetId, boolean>() };
    const plainly = (cube: readonly number[], flow: Flow) => {
      const by = commands(cube);
      return flow === "in" ? isPlainFeed(by) : by.size === 0;
    };
    const around: Surroundings = {
      sight,
      judged,
      variables,
      conduction: (way, flow) =>
        (conduction(way, flow) ?? []).filter((cube) => plainly(cube, flow)),
      isRail: () => false,
      railsOnly: true,
    };
    return (net: NetId, flow: Flow): boolean => {
      let answer = known[flow].get(net);
      if (answer === undefined) {
        answer = walkFrom(around, net, flow).arrivals.some(
          ({ end, cube }) => (end.is === "source" || end.is === "ground") && plainly(cube, flow),
        );
        known[flow].set(net, answer);
      }
      return answer;
    };
  };

  const isRail = railFinder(plain);
  const surroundings: Surroundings = { sight, judged, variables, conduction: plain, isRail };

  // While a coil's own condition is being found, relays that hold themselves (or one another in a
  // ring) are variables and not followed, nor part of any bus: following them would never end.
  const coilConduction = conductionWith((relay, closedWhen) =>
    relays.holdsItself(relay)
      ? [[variables.numberOf({ is: "relay", part: relay }), RELAY[closedWhen]]]
      : relays.contact(relay, closedWhen),
  );
  const coilSurroundings: Surroundings = {
    ...surroundings,
    conduction: coilConduction,
    isRail: railFinder(
      conductionWith((relay, closedWhen) =>
        relays.holdsItself(relay) ? [] : relays.contact(relay, closedWhen),
      ),
    ),
  };

  const shorts = (net: NetId): readonly Arrival[] => {
    const around: Surroundings = {
      ...surroundings,
      isRail: () => false,
      railsOnly: true,
      overFeeds: true,
    };
    return walkFrom(around, net, "out").arrivals.filter(
      ({ end, cube }) => end.is === "ground" && canComeAbout(cube),
    );
  };

  /** Relays that hold themselves or one another must agree on the states that a condition asks for. */
  const canComeAbout = (cube: Cube): boolean => {
    let possible: Condition = [cube];
    for (let i = 0; i < cube.length; i += 2) {
      const variable = variables.at(cube[i] as number);
      if (variable.is !== "relay") continue;
      const state = cube[i + 1] === RELAY.pulled ? "pulled" : "rested";
      const contact = relays.contact(variable.part, state);
      possible = (contact && allOf(possible, contact, MOST_STATES)) ?? possible;
    }
    return possible.length > 0;
  };

  const canPass = (way: Way, flow: Flow): boolean => {
    const { is } = way.element.law;
    const isContact = is === "contact" || is === "relay-contact";
    return isContact ? plain(way, flow)?.length !== 0 : passesCurrent(way, flow);
  };

  return {
    sight,
    judged,
    variables,
    relays,
    walk,
    isRail,
    shorts,
    canPass,
    conduction: plain,
    commands,
    trace,
  };
}
