import { type Network, restPosition } from "../circuit/index.ts";
import type { Control, Id, PartOf, PinRef, Position } from "../job/index.ts";
import { feedNets } from "./feed-nets.ts";
import type { Shared } from "./shared.ts";

/** Switches that command whole feeds rather than one function. */
const COMMANDING: ReadonlySet<Control> = new Set([
  "isolator",
  "emergency-stop",
  "key",
  "interlock",
] as const);

type Switches = Readonly<Record<Id, Position>>;

/** States looked at for one cavity, at most. */
const MOST_STATES = 48;

/**
 * Switch positions worth trying for what lies around a pin, fewest moves first: all at rest, the
 * commanding switches in every way, and in each of these every other switch by itself.
 */
export function statesAround(shared: Shared, pins: readonly PinRef[]): readonly Switches[] {
  const switches = switchesAround(shared, pins);
  const moves = (part: PartOf<"switch">): readonly Switches[] =>
    part.positions
      .filter((position) => position !== restPosition(part))
      .map((position) => ({ [part.id]: position }));
  let commands: readonly Switches[] = [{}];
  for (const part of switches.filter(({ control }) => COMMANDING.has(control))) {
    commands = [
      ...commands,
      ...commands.flatMap((state) => moves(part).map((move) => ({ ...state, ...move }))),
    ];
    if (commands.length > MOST_STATES) break;
  }
  const others = switches.filter(({ control }) => !COMMANDING.has(control));
  const all = commands.flatMap((state) => [
    state,
    ...others.flatMap((part) => moves(part).map((move) => ({ ...state, ...move }))),
  ]);
  const size = (state: Switches) => Object.keys(state).length;
  return all.sort((a, b) => size(a) - size(b)).slice(0, MOST_STATES);
}

/** Switches met on the way out from the pins, and round the coils of the relays met. */
function switchesAround({ network }: Shared, pins: readonly PinRef[]): readonly PartOf<"switch">[] {
  const feeds = feedNets(network);
  const found = new Map<Id, PartOf<"switch">>();
  const seen = new Set<number>();
  const stack = pins.flatMap((pin) => {
    const net = network.netOf.get(pin);
    return net === undefined ? [] : [net];
  });
  for (let net = stack.pop(); net !== undefined; net = stack.pop()) {
    if (seen.has(net)) continue;
    seen.add(net);
    const own = network.nets[net];
    if (!own || isHub(network, net)) continue;
    // what merely hangs on a feed takes no part in it: only what could feed it is followed
    const upstream = feeds.has(net) ? feedNets(network, net) : null;
    for (const { element, far } of own.ways) {
      if (upstream && feeds.has(far) && !upstream.has(far) && !isHub(network, far)) continue;
      const part = network.parts.get(element.part);
      if (part?.kind === "switch") found.set(part.id, part);
      stack.push(far);
      if (element.law.is !== "relay-contact") continue;
      for (const pin of ["85", "86"]) {
        const coil = network.netOf.get(`${element.part}:${pin}`);
        if (coil !== undefined) stack.push(coil);
      }
    }
  }
  return [...found.values()];
}

const isHub = (network: Network, net: number): boolean =>
  network.nets[net]?.terminals.some(({ terminal }) =>
    ["battery-plus", "battery-minus", "chassis"].includes(terminal),
  ) ?? false;
