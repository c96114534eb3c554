import { addTo } from "../../base/index.ts";
import { HARD, type NetFacts } from "./facts.ts";
import type { Joined } from "./joined.ts";
import { PASSES } from "./member.ts";

/**
 * Relays whose state may depend on itself: a contact of theirs, or of one that they command, lies on
 * a way to their own coil that passes no load, whatever its condition. Nets between which such a way
 * leads are one region; a region leads to another where it holds a contact of a relay whose coil
 * lies there, or is fed from there by a converter. A relay is in a ring where the region of its
 * contact and that of its coil lead to each other. By the number of each relay's first pin.
 */
export function relaysInRings(joined: Joined, { lies }: NetFacts): ReadonlySet<number> {
  const { members, netOf } = joined;
  const isHard = (net: number) => ((lies[net] as number) & HARD) !== 0;
  const regionOf = regions(joined, isHard);
  const region = (pin: number) => {
    const net = netOf[pin] as number;
    return isHard(net) ? -1 : regionOf(net);
  };
  const leads = new Map<number, number[]>();
  const lead = (from: number, to: number) => {
    if (from >= 0 && to >= 0) addTo(leads, from, to);
  };
  const relays: { pin: number; contacts: number[]; coils: number[] }[] = [];
  for (const { firstPin, elements, coil, hasInlets } of members) {
    if (!coil && !hasInlets) continue;
    const contacts: number[] = [];
    for (const { a, b, passes, inlets } of elements) {
      if (passes === PASSES.relay) contacts.push(region(a), region(b));
      if (!inlets) continue;
      for (const from of [region(a), region(b)])
        for (const inlet of inlets) if (inlet >= 0) lead(from, region(inlet));
    }
    if (!coil) continue;
    const coils = [region(coil.a), region(coil.b)];
    relays.push({ pin: firstPin, contacts, coils });
    for (const from of new Set(contacts)) for (const to of coils) lead(from, to);
  }
  const ringOf = stronglyConnected(leads);
  const inRings = new Set<number>();
  for (const { pin, contacts, coils } of relays) {
    const rings = new Set(coils.flatMap((one) => (one < 0 ? [] : [ringOf(one)])));
    if (contacts.some((one) => one >= 0 && rings.has(ringOf(one)))) inRings.add(pin);
  }
  return inRings;
}

/** Nets joined by what conducts in some state, hard ones left out; by the lowest net of each region. */
function regions(
  { elements, netOf, size }: Joined,
  isHard: (net: number) => boolean,
): (net: number) => number {
  const up = new Int32Array(size);
  for (let net = 0; net < size; net++) up[net] = net;
  const rootOf = (net: number): number => {
    let at = net;
    while (up[at] !== at) {
      up[at] = up[up[at] as number] as number;
      at = up[at] as number;
    }
    return at;
  };
  const { a, b, passes, order } = elements;
  for (const number of order) {
    const how = passes[number];
    if (how !== PASSES.either && how !== PASSES.relay && how !== PASSES.diode) continue;
    const netA = netOf[a[number] as number] as number;
    const netB = netOf[b[number] as number] as number;
    if (!isHard(netA) && !isHard(netB)) up[rootOf(netA)] = rootOf(netB);
  }
  return rootOf;
}

/** Which vertices lead to each other, as one name a group (Tarjan 1972), with a stack of its own. */
function stronglyConnected(
  leads: ReadonlyMap<number, readonly number[]>,
): (vertex: number) => number {
  const order = new Map<number, number>();
  const low = new Map<number, number>();
  const group = new Map<number, number>();
  const waiting: number[] = [];
  for (const start of leads.keys()) {
    if (order.has(start)) continue;
    const path: { vertex: number; next: number }[] = [];
    const enter = (vertex: number) => {
      low.set(vertex, order.size);
      order.set(vertex, order.size);
      waiting.push(vertex);
      path.push({ vertex, next: 0 });
    };
    enter(start);
    for (let here = path.at(-1); here; here = path.at(-1)) {
      const { vertex } = here;
      const to = leads.get(vertex)?.[here.next++];
      const lower = (other: number) => low.set(vertex, Math.min(low.get(vertex) as number, other));
      if (to !== undefined) {
        if (!order.has(to)) enter(to);
        else if (!group.has(to)) lower(order.get(to) as number);
        continue;
      }
      path.pop();
      const before = path.at(-1);
      if (before) {
        const lowest = Math.min(low.get(before.vertex) as number, low.get(vertex) as number);
        low.set(before.vertex, lowest);
      }
      if (low.get(vertex) !== order.get(vertex)) continue;
      for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
        group.set(one, vertex);
        if (one === vertex) break;
      }
    }
  }
  return (vertex) => group.get(vertex) ?? vertex;
}
