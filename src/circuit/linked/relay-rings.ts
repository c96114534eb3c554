import { Groups } from "../../base/index.ts";
import type { NetFacts } from "./facts.ts";
import type { Joined } from "./joined.ts";
import { HARD } from "./lies.ts";
import { gather, type Lists } from "./lists.ts";
import { PASSES } from "./member.ts";
import type { Space } from "./space.ts";

/**
 * Relays whose state may depend on itself: a contact of theirs, or of one that they command, lies on
 * a way to their own coil that passes no load, whatever its condition. Nets between which such a way
 * leads are one region; a region leads to another where it holds a contact of a relay whose coil
 * lies there, or is fed from there by a converter. A relay is in a ring where the region of its
 * contact and that of its coil lead to each other. 1 at the number of each such relay's first pin.
 */
export function relaysInRings(
  joined: Joined,
  { lies, source, ground }: NetFacts,
  kept: Space,
  scratch: Space,
): Uint8Array {
  const { roster, netOf, size } = joined;
  const { relayContacts, inlets } = roster;
  // a minus that stands on another battery's plus is neither feed nor ground: ways lead on over it
  const isHard = (net: number) =>
    ((lies[net] as number) & HARD) !== 0 &&
    ((source[net] as number) >= 0 || (ground[net] as number) >= 0);
  const regions = regionsOf(joined, isHard, scratch);
  const region = (pin: number) => {
    const net = netOf[pin] as number;
    return isHard(net) ? -1 : regions.of(net);
  };
  const most = 4 * relayContacts.length + 2 * inlets.length;
  const froms = scratch.unset(most);
  const tos = scratch.unset(most);
  let count = 0;
  const lead = (from: number, to: number) => {
    if (from < 0 || to < 0) return;
    froms[count] = from;
    tos[count++] = to;
  };
  for (const { a, b, coilA, coilB } of relayContacts) {
    const plus = region(coilA);
    const minus = region(coilB);
    for (const end of [a, b]) {
      lead(region(end), plus);
      lead(region(end), minus);
    }
  }
  for (const { a, b, fedBy } of inlets) {
    lead(region(a), region(fedBy));
    lead(region(b), region(fedBy));
  }
  const starts = froms.subarray(0, count);
  const ringOf = stronglyConnected(
    size,
    gather(size, starts, tos.subarray(0, count), scratch),
    starts,
    scratch,
  );
  const ringAt = (pin: number): number => {
    const one = region(pin);
    return one < 0 ? -1 : (ringOf[one] as number);
  };
  const inRings = kept.flags(size);
  for (const { relay, a, b, coilA, coilB } of relayContacts) {
    const plus = ringAt(coilA);
    const minus = ringAt(coilB);
    for (const end of [a, b]) {
      const ring = ringAt(end);
      if (ring >= 0 && (ring === plus || ring === minus)) inRings[relay] = 1;
    }
  }
  return inRings;
}

/** Nets joined by what conducts in some state, hard ones left out. */
function regionsOf(
  { elements, netOf, size }: Joined,
  isHard: (net: number) => boolean,
  scratch: Space,
): Groups {
  const regions = new Groups(size, scratch.unset(size));
  const { a, b, passes, order } = elements;
  for (let at = 0; at < order.length; at++) {
    const number = order[at] as number;
    const how = passes[number];
    if (how !== PASSES.either && how !== PASSES.relay && how !== PASSES.diode) continue;
    const netA = netOf[a[number] as number] as number;
    const netB = netOf[b[number] as number] as number;
    if (!isHard(netA) && !isHard(netB)) regions.join(netA, netB);
  }
  return regions;
}

/**
 * Which vertices lead to each other, as one number a group (Tarjan 1972), with a stack of its own;
 * a vertex that leads nowhere from any of the starts is a group by itself.
 */
function stronglyConnected(
  vertices: number,
  { start, list }: Lists,
  starts: Int32Array,
  scratch: Space,
): Int32Array {
  const group = scratch.unset(vertices);
  for (let vertex = 0; vertex < vertices; vertex++) group[vertex] = vertex;
  /** When each was found, counted from 1; 0: not yet. */
  const found = scratch.zeros(vertices);
  const low = scratch.unset(vertices);
  const isGrouped = scratch.flags(vertices);
  const next = scratch.unset(vertices);
  next.set(start.subarray(0, vertices));
  const waiting: number[] = [];
  const path: number[] = [];
  let count = 0;
  const enter = (vertex: number) => {
    count++;
    found[vertex] = count;
    low[vertex] = count;
    waiting.push(vertex);
    path.push(vertex);
  };
  const lower = (vertex: number, to: number) => {
    if (to < (low[vertex] as number)) low[vertex] = to;
  };
  for (let at = 0; at < starts.length; at++) {
    const first = starts[at] as number;
    if (found[first] !== 0) continue;
    enter(first);
    for (let vertex = path.at(-1); vertex !== undefined; vertex = path.at(-1)) {
      const place = next[vertex] as number;
      if (place < (start[vertex + 1] as number)) {
        next[vertex] = place + 1;
        const to = list[place] as number;
        if (found[to] === 0) enter(to);
        else if (isGrouped[to] === 0) lower(vertex, found[to] as number);
        continue;
      }
      path.pop();
      const before = path.at(-1);
      if (before !== undefined) lower(before, low[vertex] as number);
      if (low[vertex] !== found[vertex]) continue;
      for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
        group[one] = vertex;
        isGrouped[one] = 1;
        if (one === vertex) break;
      }
    }
  }
  return group;
}
