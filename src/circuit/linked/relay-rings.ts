import type { NetFacts } from "./facts.ts";
import { gather, type Joined, type Lists } from "./joined.ts";
import { HARD } from "./lies.ts";
import { PASSES } from "./member.ts";

/**
 * Relays whose state may depend on itself: a contact of theirs, or of one that they command, lies on
 * a way to their own coil that passes no load, whatever its condition. Nets between which such a way
 * leads are one region; a region leads to another where it holds a contact of a relay whose coil
 * lies there, or is fed from there by a converter. A relay is in a ring where the region of its
 * contact and that of its coil lead to each other. 1 at the number of each such relay's first pin.
 */
export function relaysInRings(joined: Joined, { lies, source, ground }: NetFacts): Uint8Array {
  const { roster, netOf, size } = joined;
  // a minus that stands on another battery's plus is neither feed nor ground: ways lead on over it
  const isHard = (net: number) =>
    ((lies[net] as number) & HARD) !== 0 &&
    ((source[net] as number) >= 0 || (ground[net] as number) >= 0);
  const regionOf = regions(joined, isHard);
  const region = (pin: number) => {
    const net = netOf[pin] as number;
    return isHard(net) ? -1 : regionOf(net);
  };
  const [froms, tos]: [number[], number[]] = [[], []];
  const lead = (from: number, to: number) => {
    if (from < 0 || to < 0) return;
    froms.push(from);
    tos.push(to);
  };
  for (const { elements, coil } of roster.commanded) {
    for (const { a, b, passes, inlets } of elements) {
      const from = region(a);
      const other = region(b);
      if (passes === PASSES.relay && coil) {
        const [to, minus] = [region(coil.a), region(coil.b)];
        lead(from, to);
        lead(from, minus);
        lead(other, to);
        lead(other, minus);
      }
      for (const inlet of inlets ?? []) {
        if (inlet < 0) continue;
        lead(from, region(inlet));
        lead(other, region(inlet));
      }
    }
  }
  const ringOf = stronglyConnected(
    gather(size, Int32Array.from(froms), Int32Array.from(tos)),
    froms,
  );
  const ringAt = (pin: number): number => {
    const one = region(pin);
    return one < 0 ? -1 : (ringOf[one] as number);
  };
  const inRings = new Uint8Array(size);
  for (const { firstPin, elements, coil } of roster.commanded) {
    if (!coil) continue;
    const [plus, minus] = [ringAt(coil.a), ringAt(coil.b)];
    const isOfCoil = (pin: number) => {
      const ring = ringAt(pin);
      return ring >= 0 && (ring === plus || ring === minus);
    };
    if (
      elements.some(({ a, b, passes }) => passes === PASSES.relay && (isOfCoil(a) || isOfCoil(b)))
    )
      inRings[firstPin] = 1;
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

/**
 * Which vertices lead to each other, as one number a group (Tarjan 1972), with a stack of its own;
 * a vertex that leads nowhere from any of the starts is a group by itself.
 */
function stronglyConnected({ start, list }: Lists, starts: readonly number[]): Int32Array {
  const vertices = start.length - 1;
  const group = new Int32Array(vertices);
  for (let vertex = 0; vertex < vertices; vertex++) group[vertex] = vertex;
  /** When each was found, counted from 1; 0: not yet. */
  const found = new Int32Array(vertices);
  const low = new Int32Array(vertices);
  const isGrouped = new Uint8Array(vertices);
  const next = start.slice(0, vertices);
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
  for (const first of starts) {
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
