import { type Id, type PinRef, type RoleName, splitRef } from "../../job/index.ts";
import type { NetTerminal, Sight } from "../linked/index.ts";
import type { NetId } from "../nets.ts";
import type { Cube } from "./conditions.ts";
import { TWO_STATE, type Variables } from "./variables.ts";

/** What a walk without a load in it can come to. */
export type End =
  | { readonly is: "source" | "ground"; readonly pin: PinRef; readonly cube: Cube }
  | {
      readonly is:
        | "own-pin"
        | "other-module"
        | "untraced"
        | "sensor-plus"
        | "sensor-minus"
        | "sensor-signal"
        | "charge-signal";
      readonly pin: PinRef;
    }
  /** A page end whose beyond the user has named. */
  | { readonly is: "named"; readonly pin: PinRef; readonly role: RoleName };

/** Of the judged module's pins on one net these many stand for all: any pin sees another one then. */
const MOST_OWN_PINS = 2;

/**
 * What else ends at a net that is neither fed nor grounded for good. Of other modules the first
 * stands for all of them, and of the judged one's pins the first two and those between which it
 * says to have a source.
 */
export function endsAt(sight: Sight, net: NetId, judged: Id | null): readonly End[] {
  const ends: End[] = [];
  let others = 0;
  let own = 0;
  for (const terminal of sight.terminals(net)) {
    const { pin, part } = terminal;
    switch (terminal.terminal) {
      case "battery-plus":
      case "battery-minus":
      case "chassis":
        break;
      case "module":
        if (part.id !== judged) {
          if (others++ === 0) ends.push({ is: "other-module", pin });
        } else if (own++ < MOST_OWN_PINS || isOfSource(terminal)) ends.push({ is: "own-pin", pin });
        break;
      case "page-end":
        if (terminal.untraced) ends.push({ is: "untraced", pin });
        else if (part.kind === "offpage" && part.is !== undefined && part.is !== "switched-supply")
          ends.push({ is: "named", pin, role: part.is });
        break;
      default:
        ends.push({ is: terminal.terminal, pin });
    }
  }
  return ends;
}

/** What feeds a net in some states: an alternator, or what is switched somewhere beyond the page. */
export function railsAt(sight: Sight, net: NetId, variables: Variables): readonly End[] {
  return sight.rails(net).map(({ pin, beyond }): End => {
    const fed = variables.numberOf(
      beyond === null ? { is: "engine" } : { is: "beyond", part: beyond },
    );
    return { is: "source", pin, cube: [fed, TWO_STATE.on] };
  });
}

function isOfSource({ pin, part }: NetTerminal): boolean {
  const { name } = splitRef(pin);
  const sources = part.kind === "module" ? (part.sources ?? []) : [];
  return sources.some(({ between }) => between.includes(name));
}
