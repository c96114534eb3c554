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
  return changes.flatMap((change): PlayEvent[] => {
    if ("blew" in change) {
      const { part, amps } = change.blew;
      return [{ seconds, what: "blew", part, amps, drawnBy: cause(change.blew, change.point) }];
    }
    const decider = deciders.get(change.id);
    return decider ? [decided(wiring, decider, change.on, seconds)] : [];
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
