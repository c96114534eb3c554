import type { Id, PinRef, RoleName } from "../../job/index.ts";
import type { Terminal } from "../kinds/index.ts";
import type { Net, Network } from "../nets.ts";
import { ALWAYS, type Cube } from "./conditions.ts";
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
  const plus = at("battery-plus");
  const source = plus ?? beyond("supply");
  // Between two batteries in series the point is live, not ground.
  const ground = at("chassis") ?? (plus === null ? at("battery-minus") : null) ?? beyond("ground");
  const engine = net.ways.some(({ element, forward }) => {
    return forward && element.law.is === "source" && element.law.live === "engine-running";
  });
  return {
    source,
    ground,
    mayFeed: source !== null || engine || beyond("switched-supply") !== null,
    mayGround: ground !== null || beyond("switched-ground") !== null,
  };
}

/** What ends at a net by itself, before any element is crossed. */
export function endsAt(
  network: Network,
  net: Net,
  judged: Id | null,
  variables: Variables,
): readonly End[] {
  const ends: End[] = [];
  const between = net.terminals.some((one) => one.terminal === "battery-plus");
  for (const { pin, part, terminal } of net.terminals) {
    switch (terminal) {
      case "battery-plus":
        ends.push({ is: "source", pin, cube: ALWAYS });
        break;
      case "battery-minus":
        // Between two batteries in series the point is live, not ground.
        if (!between) ends.push({ is: "ground", pin, cube: ALWAYS });
        break;
      case "chassis":
        ends.push({ is: "ground", pin, cube: ALWAYS });
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
  for (const way of net.ways) {
    const { law } = way.element;
    if (law.is === "source" && law.live === "engine-running" && way.forward) {
      const engine = variables.numberOf({ is: "engine" });
      ends.push({ is: "source", pin: way.from, cube: [engine, TWO_STATE.on] });
    }
  }
  return ends;
}

function namedEnd(pin: PinRef, part: Id, role: RoleName, variables: Variables): End {
  const on = (): Cube => [variables.numberOf({ is: "beyond", part }), TWO_STATE.on];
  switch (role) {
    case "supply":
      return { is: "source", pin, cube: ALWAYS };
    case "switched-supply":
      return { is: "source", pin, cube: on() };
    case "ground":
      return { is: "ground", pin, cube: ALWAYS };
    case "switched-ground":
      return { is: "ground", pin, cube: on() };
    default:
      return { is: "named", pin, role };
  }
}
