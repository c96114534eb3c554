import type { Id, PinRef, RoleName } from "../../job/index.ts";
import type { Terminal } from "../kinds/index.ts";
import type { Net, Network } from "../nets.ts";
import { raisedMinuses } from "./battery-stack.ts";
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

/** What a net is whatever any switch does; pins null where it is not. */
export interface FixedEnds {
  readonly source: PinRef | null;
  readonly ground: PinRef | null;
  /** Fed, or grounded, at least in some state of the machine. */
  readonly mayFeed: boolean;
  readonly mayGround: boolean;
}

const fixed = new WeakMap<Net, FixedEnds>();

export function fixedEnds(network: Network, net: Net): FixedEnds {
  let found = fixed.get(net);
  if (!found) {
    found = findFixedEnds(network, net);
    fixed.set(net, found);
  }
  return found;
}

function findFixedEnds(network: Network, net: Net): FixedEnds {
  const at = (...wanted: readonly Terminal[]) =>
    net.terminals.find((one) => wanted.includes(one.terminal))?.pin ?? null;
  const beyond = (...roles: readonly RoleName[]) =>
    net.terminals.find(
      ({ pin, part }) =>
        part.kind === "offpage" &&
        part.is !== undefined &&
        roles.includes(part.is) &&
        !network.untraced.has(pin),
    )?.pin ?? null;
  const source = at("battery-plus") ?? beyond("supply");
  const raised = raisedMinuses(network);
  const minus =
    net.terminals.find((one) => one.terminal === "battery-minus" && !raised.has(one.pin))?.pin ??
    null;
  // Where plus itself lies on chassis, chassis is the feed; it takes a minus there to make a short.
  const ground = minus ?? (source === null ? at("chassis") : null) ?? beyond("ground");
  return {
    source,
    ground,
    mayFeed: source !== null || chargers(net).length > 0 || beyond("switched-supply") !== null,
    mayGround: ground !== null,
  };
}

/** Pins that an engine's alternator feeds; its charge line only tells and excites. */
const chargers = (net: Net): readonly PinRef[] =>
  net.ways
    .filter(({ element, forward, from }) => {
      const isCharger = element.law.is === "source" && element.law.live === "engine-running";
      const tells = net.terminals.some(
        (one) => one.pin === from && one.terminal === "charge-signal",
      );
      return forward && isCharger && !tells;
    })
    .map((way) => way.from);

/** What else ends at a net that is neither fed nor grounded for good. */
export function endsAt(
  network: Network,
  net: Net,
  judged: Id | null,
  variables: Variables,
): readonly End[] {
  const ends: End[] = [];
  for (const { pin, part, terminal } of net.terminals) {
    switch (terminal) {
      case "battery-plus":
      case "battery-minus":
      case "chassis":
        break;
      case "module":
        ends.push({ is: part.id === judged ? "own-pin" : "other-module", pin });
        break;
      case "page-end":
        if (network.untraced.has(pin)) ends.push({ is: "untraced", pin });
        else if (part.kind === "offpage" && part.is !== undefined)
          ends.push(namedEnd(pin, part.id, part.is, variables));
        break;
      default:
        ends.push({ is: terminal, pin });
    }
  }
  for (const pin of chargers(net)) {
    const engine = variables.numberOf({ is: "engine" });
    ends.push({ is: "source", pin, cube: [engine, TWO_STATE.on] });
  }
  return ends;
}

/** A feed that is switched somewhere beyond the page is one here; any other role is as stated. */
function namedEnd(pin: PinRef, part: Id, role: RoleName, variables: Variables): End {
  if (role !== "switched-supply") return { is: "named", pin, role };
  const beyond = variables.numberOf({ is: "beyond", part });
  return { is: "source", pin, cube: [beyond, TWO_STATE.on] };
}
