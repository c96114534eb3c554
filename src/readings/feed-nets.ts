import type { Network } from "../circuit/index.ts";

const wholeFeeds = new WeakMap<Network, ReadonlySet<number>>();

/**
 * Nets that battery plus reaches through protection and contacts alone; where a net is taken out,
 * those that it reaches without that one.
 */
export function feedNets(network: Network, without: number | null = null): ReadonlySet<number> {
  if (without !== null) return reach(network, without);
  const known = wholeFeeds.get(network);
  if (known) return known;
  const found = reach(network, null);
  wholeFeeds.set(network, found);
  return found;
}

/**
 * Those and what is fed besides: over diodes in the direction that they conduct, and from chargers
 * and converters. What a module gives out is no feed.
 */
export function fedNets(network: Network): ReadonlySet<number> {
  const known = alsoFed.get(network);
  if (known) return known;
  const found = reach(network, null, true);
  alsoFed.set(network, found);
  return found;
}

const alsoFed = new WeakMap<Network, ReadonlySet<number>>();

function reach(network: Network, without: number | null, alsoMade = false): ReadonlySet<number> {
  const isSide = (net: number, ...names: readonly string[]) =>
    network.nets[net]?.terminals.some(({ terminal }) => names.includes(terminal)) ?? false;
  const isMade = (net: number) =>
    alsoMade &&
    (network.nets[net]?.ways.some(
      ({ element, forward }) =>
        forward &&
        element.law.is === "source" &&
        network.parts.get(element.part)?.kind !== "module",
    ) ??
      false);
  const reached = new Set<number>();
  const stack = network.nets.flatMap((_, net) =>
    isSide(net, "battery-plus") || isMade(net) ? [net] : [],
  );
  for (let net = stack.pop(); net !== undefined; net = stack.pop()) {
    // between two batteries in series the one's minus is fed by the other's plus
    const isMinus = isSide(net, "battery-minus") && !isSide(net, "battery-plus");
    if (net === without || reached.has(net) || isMinus || isSide(net, "chassis")) continue;
    reached.add(net);
    for (const { element, far, forward } of network.nets[net]?.ways ?? []) {
      const { is } = element.law;
      const isOn = is === "protection" || is === "contact" || is === "relay-contact";
      if (isOn || (alsoMade && forward && is === "diode")) stack.push(far);
    }
  }
  return reached;
}
