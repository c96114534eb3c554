import type { Id, PinId } from "../../job/index.ts";
import type { Circuit } from "../machine-circuit.ts";
import type { Decider, OperatingPoint, Wiring } from "../solve/index.ts";
import type { LiveState } from "./live-state.ts";
import type { Overload } from "./overload.ts";
import type { PlayEvent } from "./play-event.ts";
import type { Change } from "./settle.ts";

/** What relays, modules and fuses did on the way to rest. `cause` names what drew a fuse's amps. */
export function changeEvents(
  wiring: Wiring,
  changes: readonly Change[],
  seconds: number,
  cause: (blew: Overload, at: OperatingPoint) => readonly Id[],
): readonly PlayEvent[] {
  if (changes.length === 0) return [];
  const deciders = new Map(wiring.deciders.map((one) => [one.id, one]));
  return lasting(changes, deciders).flatMap((change): PlayEvent[] => {
    if ("blew" in change) {
      const { part, amps } = change.blew;
      return [{ seconds, what: "blew", part, amps, drawnBy: cause(change.blew, change.point) }];
    }
    const decider = deciders.get(change.id);
    return decider ? [decided(wiring, decider, change.on, seconds)] : [];
  });
}

/**
 * Without what paths of a module do that loses its power at the same instant: such a path closes
 * and opens again only in the order in which all that was worked out.
 */
function lasting(
  changes: readonly Change[],
  deciders: ReadonlyMap<string, Decider>,
): readonly Change[] {
  const decider = (change: Change) => ("blew" in change ? undefined : deciders.get(change.id));
  const dead = new Set(
    changes.flatMap((change) => {
      const one = decider(change);
      return one?.is === "fed" && !("blew" in change) && !change.on ? [one.part] : [];
    }),
  );
  const times = new Map<string, number>();
  for (const change of changes)
    if (!("blew" in change)) times.set(change.id, (times.get(change.id) ?? 0) + 1);
  return changes.filter((change) => {
    const one = decider(change);
    if (one?.is !== "level" || !dead.has(one.part)) return true;
    return (times.get(one.id) ?? 0) % 2 === 1;
  });
}

function decided(wiring: Wiring, decider: Decider, on: boolean, seconds: number): PlayEvent {
  const { part } = decider;
  switch (decider.is) {
    case "coil":
      return { seconds, what: on ? "pulled-in" : "dropped-out", part };
    case "fed":
      return { seconds, what: on ? "powered" : "unpowered", part };
    case "level":
      return {
        seconds,
        what: on ? "path-closed" : "path-opened",
        part,
        between: pathOf(wiring, decider.id),
      };
  }
}

function pathOf({ branches }: Wiring, decider: string): readonly [PinId, PinId] {
  const element = branches.find(({ gate }) => gate?.by === decider)?.element;
  return [element?.a ?? "", element?.b ?? ""];
}

/**
 * Loads that came on or went off, and modules that woke or went dead without anything else hanging
 * on it; `before` is null when the play begins.
 */
export function loadEvents(
  { parts }: Circuit,
  { deciders }: Wiring,
  before: LiveState["parts"] | null,
  after: LiveState["parts"],
  seconds: number,
): readonly PlayEvent[] {
  const decided = new Set(deciders.map(({ part }) => part));
  return parts.flatMap(({ id, kind }): PlayEvent[] => {
    // these have events of their own
    if (decided.has(id)) return [];
    const on = after[id]?.on ?? false;
    if (on === (before?.[id]?.on ?? false)) return [];
    if (kind === "module") return [{ seconds, what: on ? "powered" : "unpowered", part: id }];
    return [{ seconds, what: on ? "on" : "off", part: id }];
  });
}
