import type { NetId, Network } from "../circuit/index.ts";

const known = new WeakMap<Network, (net: NetId) => boolean>();

/**
 * Whether current that has come to a ground point can get back to a battery. Battery minus joins
 * chassis, and engine, cab and frame join one another, only where that is drawn. Where no battery
 * is drawn, or one whose minus leads nowhere yet, nobody can tell: then it can.
 */
export function leadsBackToBattery(network: Network, net: NetId): boolean {
  let answer = known.get(network);
  if (!answer) {
    answer = findWaysBack(network);
    known.set(network, answer);
  }
  return answer(net);
}

function findWaysBack(network: Network): (net: NetId) => boolean {
  const batteries = [...network.parts.values()].filter((part) => part.kind === "battery");
  const minuses = batteries.map(({ id }) => `${id}:-`);
  const isOpen = minuses.some((pin) => (network.hops.get(pin)?.length ?? 0) === 0);
  if (batteries.length === 0 || isOpen) return () => true;
  const seen = new Set<NetId>();
  const queue: NetId[] = [];
  const visit = (net: NetId | undefined) => {
    if (net === undefined || seen.has(net)) return;
    seen.add(net);
    queue.push(net);
  };
  for (const pin of minuses) visit(network.netOf.get(pin));
  for (const [id, net] of network.nets.entries()) {
    // A ground beyond the page, or a line that goes on there, may well be joined to it.
    if (net.terminals.some((one) => one.terminal === "page-end")) visit(id);
  }
  for (const id of queue) {
    for (const way of network.nets[id]?.ways ?? []) {
      const { is } = way.element.law;
      if (is === "contact" || is === "relay-contact" || is === "protection" || is === "diode")
        visit(way.far);
    }
  }
  return (net) => seen.has(net);
}
