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

function reach(network: Network, without: number | null): ReadonlySet<number> {
  const isSide = (net: number, ...names: readonly string[]) =>
    network.nets[net]?.terminals.some(({ terminal }) => names.includes(terminal)) ?? false;
  const reached = new Set<number>();
  const stack = network.nets.flatMap((_, net) => (isSide(net, "battery-plus") ? [net] : []));
  for (let net = stack.pop(); net !== undefined; net = stack.pop()) {
    if (net === without || reached.has(net) || isSide(net, "battery-minus", "chassis")) continue;
    reached.add(net);
    for (const { element, far } of network.nets[net]?.ways ?? []) {
      const { is } = element.law;
      if (is === "protection" || is === "contact" || is === "relay-contact") stack.push(far);
    }
  }
  return reached;
}
