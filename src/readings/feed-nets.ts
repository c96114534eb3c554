import type { Network } from "../circuit/index.ts";

/** Nets that battery plus reaches through protection and contacts alone. */
export function feedNets(network: Network): ReadonlySet<number> {
  const isSide = (net: number, ...names: readonly string[]) =>
    network.nets[net]?.terminals.some(({ terminal }) => names.includes(terminal)) ?? false;
  const reached = new Set<number>();
  const stack = network.nets.flatMap((_, net) => (isSide(net, "battery-plus") ? [net] : []));
  for (let net = stack.pop(); net !== undefined; net = stack.pop()) {
    if (reached.has(net) || isSide(net, "battery-minus", "chassis")) continue;
    reached.add(net);
    for (const { element, far } of network.nets[net]?.ways ?? []) {
      const { is } = element.law;
      if (is === "protection" || is === "contact" || is === "relay-contact") stack.push(far);
    }
  }
  return reached;
}
