import { influences } from "../circuit/index.ts";
import {
  type CavityRef,
  type Id,
  type Job,
  ownerOf,
  type PinRef,
  type When,
} from "../job/index.ts";
import { pinsOfCavity } from "./cavity-pins.ts";
import { type DropLeg, legsOf } from "./drop-legs.ts";
import { follow, startAt, stateOf } from "./drop-path.ts";
import { dropReadings } from "./drop-readings.ts";
import { uncertainIn } from "./marginal-relays.ts";
import { dependsSentence } from "./probes.ts";
import { type Shared, sharedFor } from "./shared.ts";
import { statesAround } from "./switch-states.ts";

/** The way from what feeds a load, over it, and back; `legs` is empty where `why` says why. */
export interface DropsAlong {
  readonly legs: readonly DropLeg[];
  /** A in the load, or in the cavity. */
  readonly amps: number;
  readonly why: string | null;
  /** It depends on something that nobody has said, which `why` names. */
  readonly isUnsaid: boolean;
}

const nothing = (why: string): DropsAlong => ({ legs: [], amps: 0, why, isUnsaid: false });

/**
 * Each leg of the way that the current of a load, or through a cavity, takes in a state, from plus to
 * minus, with what it should drop and what is usual at most.
 */
export function dropsAlong(job: Job, machine: Id, of: Id | CavityRef, when: When): DropsAlong {
  const shared = sharedFor(job, machine);
  const state = stateOf(shared, when);
  if (typeof state === "string") return nothing(state);
  const at = startAt(shared, state, of);
  const depends = dependsAt(shared, when, at ? [at.ref] : pinsOf(shared, of));
  if (depends !== null) return { ...nothing(depends), isUnsaid: true };
  if (!at)
    return nothing(`No current flows through ${of} in this state, as far as the drawing tells.`);
  const along = [
    ...follow(state, at.up, "against").reverse(),
    ...(at.load === null ? [] : [at.load]),
    ...follow(state, at.down, "along"),
  ];
  const legs = legsOf(shared, state, along);
  const readings = dropReadings(shared, when, state.wiring);
  return {
    legs: legs.map((leg) => ({ ...leg, read: readings(leg) })),
    amps: at.amps,
    why: null,
    isUnsaid: false,
  };
}

/** Switch positions, fewest first, in which current flows in a load or through a cavity; null: in none. */
export function whenCurrentFlows(job: Job, machine: Id, of: Id | CavityRef): When | null {
  const shared = sharedFor(job, machine);
  for (const switches of statesAround(shared, pinsOf(shared, of))) {
    const when: When = Object.keys(switches).length > 0 ? { switches: { ...switches } } : {};
    const state = stateOf(shared, when);
    if (typeof state !== "string" && startAt(shared, state, of)) return when;
  }
  return null;
}

/** A load's own pins, or those that a cavity is tied to. */
function pinsOf(shared: Shared, of: Id | CavityRef): readonly PinRef[] {
  if (!shared.parts.has(of)) return pinsOfCavity(shared.job, of);
  return [...shared.network.netOf.keys()].filter((pin) => ownerOf(pin) === of);
}

/** What nobody has said and the volts at some places depend on, as a sentence; null: nothing. */
function dependsAt(
  shared: Shared,
  when: When,
  refs: readonly (PinRef | CavityRef)[],
): string | null {
  const bench = shared.bench(when);
  const chassis = bench.wiring.probe("chassis");
  const doubts = uncertainIn(bench);
  const whats = refs.flatMap((ref) => {
    const probed = bench.wiring.probe(ref);
    if (!probed.ok || !chassis.ok) return [];
    const found = influences(doubts.point, doubts.unknowns, probed.node, chassis.node);
    return found.map(({ what }) => what);
  });
  return whats.length === 0 ? null : dependsSentence(whats);
}
