import { type Id, ownerOf, type PinRef } from "../../job/index.ts";
import type { NetId, Network } from "../nets.ts";

const known = new WeakMap<Network, ReadonlySet<PinRef>>();

/**
 * Minus terminals that stand on another battery's plus, over wires, fuses or contacts alone: between
 * batteries in series the point is live, not ground.
 */
export function raisedMinuses(network: Network): ReadonlySet<PinRef> {
  let found = known.get(network);
  if (!found) {
    found = findRaisedMinuses(network);
    known.set(network, found);
  }
  return found;
}

function findRaisedMinuses(network: Network): ReadonlySet<PinRef> {
  const raised = new Set<PinRef>();
  const batteries = [...network.parts.values()].filter((part) => part.kind === "battery");
  if (batteries.length < 2) return raised;
  for (const { id } of batteries) {
    const minus: PinRef = `${id}:-`;
    const net = network.netOf.get(minus);
    if (net !== undefined && standsOnAnotherPlus(network, net, id)) raised.add(minus);
  }
  return raised;
}

function standsOnAnotherPlus(network: Network, start: NetId, battery: Id): boolean {
  const seen = new Set<NetId>([start]);
  const queue: NetId[] = [start];
  for (const id of queue) {
    const net = network.nets[id];
    if (!net) continue;
    const pluses = net.terminals.filter((one) => one.terminal === "battery-plus");
    if (pluses.some((one) => ownerOf(one.pin) !== battery)) return true;
    if (pluses.length > 0 || net.terminals.some((one) => one.terminal === "chassis")) continue;
    for (const way of net.ways) {
      const { is } = way.element.law;
      const passes = is === "protection" || is === "contact" || is === "relay-contact";
      if (!passes || seen.has(way.far)) continue;
      seen.add(way.far);
      queue.push(way.far);
    }
  }
  return false;
}
