/**
 * Wires, chassis places and page ends merged into nets, in numbers alone.
 *
 * Pins, elements and wires have numbers that they keep from one state of the drawing to the next; a
 * net goes by the lowest number among its pins, so that what an edit does not touch keeps its
 * numbers and can be told to be the same by comparing them. Everything here takes time in
 * proportion to the drawing and holds no objects: a machine of 10,000 wires is joined up in a few
 * milliseconds. Lists are kept end to end in one array (`list`), those of `n` from `start[n]` up to
 * `start[n + 1]`.
 */
import type { ElementColumns } from "./element-table.ts";
import type { Member } from "./member.ts";

/** Lists by number, end to end. */
export interface Lists {
  readonly start: Int32Array;
  readonly list: Int32Array;
}

/** A wire between two pins by their numbers. */
export interface MemberWire {
  readonly number: number;
  readonly from: number;
  readonly to: number;
}

export interface Joined {
  /** One more than the highest pin number. */
  readonly size: number;
  readonly members: readonly Member[];
  readonly elements: ElementColumns;
  /** Net of each pin, by the lowest number among its pins; −1 where there is no such pin any more. */
  readonly netOf: Int32Array;
  /** Ways out of each net in the order of the drawing: twice the element's number, one more from `b`. */
  readonly ways: Lists;
  /** Pins of each net that are more than the end of an element: twice the pin, one more if untraced. */
  readonly terminals: Lists;
  /** For each pin, pairs of the pin hopped to and the wire's number; −1 where no wire is seen. */
  readonly hops: Lists;
  /** The net at the far end of each way. */
  readonly far: Int32Array;
  /** How many pins each net has. */
  readonly pinCount: Int32Array;
}

export function joinUp(
  members: readonly Member[],
  elements: ElementColumns,
  wires: readonly MemberWire[],
  size: number,
): Joined {
  const unseen = unseenJoins(members);
  const hops = hopsOf(wires, unseen, size);
  const netOf = netsOf(members, hops, size);
  const pinCount = new Int32Array(size);
  for (let pin = 0; pin < size; pin++) {
    const net = netOf[pin] as number;
    if (net >= 0) pinCount[net] = (pinCount[net] as number) + 1;
  }
  const { a, b, order, count } = elements;
  const far = new Int32Array(2 * count);
  for (const number of order) {
    far[2 * number] = netOf[b[number] as number] as number;
    far[2 * number + 1] = netOf[a[number] as number] as number;
  }
  const ways = gather(size, (put) => {
    for (const number of order) {
      put(far[2 * number + 1] as number, 2 * number);
      put(far[2 * number] as number, 2 * number + 1);
    }
  });
  const untraced = untracedPins(members);
  const terminals = gather(size, (put) => {
    for (const member of members) {
      for (const { pin } of member.terminals)
        put(netOf[pin] as number, 2 * pin + (untraced.has(pin) ? 1 : 0));
    }
  });
  return { size, members, elements, netOf, far, ways, terminals, hops, pinCount };
}

/** Lists built by putting numbers to numbers, in the order in which they are put; `fill` runs twice. */
export function gather(
  size: number,
  fill: (put: (to: number, number: number) => void) => void,
): Lists {
  const start = new Int32Array(size + 1);
  fill((to) => {
    start[to + 1] = (start[to + 1] as number) + 1;
  });
  for (let n = 0; n < size; n++) start[n + 1] = (start[n + 1] as number) + (start[n] as number);
  const next = start.slice(0, size);
  const list = new Int32Array(start[size] as number);
  fill((to, number) => {
    const at = next[to] as number;
    list[at] = number;
    next[to] = at + 1;
  });
  return { start, list };
}

/** Pairs of pins that are one point without a wire: each with the first of its kind. */
function unseenJoins(members: readonly Member[]): readonly (readonly [number, number])[] {
  const firstWith = new Map<string, number>();
  const joins: [number, number][] = [];
  for (const { joinKey, firstPin } of members) {
    if (joinKey === null) continue;
    const first = firstWith.get(joinKey);
    if (first === undefined) firstWith.set(joinKey, firstPin);
    else joins.push([first, firstPin]);
  }
  return joins;
}

/** Page ends that have no partner and whose beyond the user has not named. */
function untracedPins(members: readonly Member[]): ReadonlySet<number> {
  const counts = new Map<string, number>();
  for (const { page } of members) {
    if (page !== null) counts.set(page, (counts.get(page) ?? 0) + 1);
  }
  const untraced = new Set<number>();
  for (const { page, part, firstPin } of members) {
    if (page === null || part.kind !== "offpage" || part.is !== undefined) continue;
    if (page === "" || counts.get(page) === 1) untraced.add(firstPin);
  }
  return untraced;
}

function hopsOf(
  wires: readonly MemberWire[],
  unseen: readonly (readonly [number, number])[],
  size: number,
): Lists {
  return gather(size, (put) => {
    const hop = (pin: number, to: number, wire: number) => {
      put(pin, to);
      put(pin, wire);
    };
    for (const { from, to, number } of wires) {
      hop(from, to, number);
      hop(to, from, number);
    }
    for (const [a, b] of unseen) {
      hop(a, b, -1);
      hop(b, a, -1);
    }
  });
}

function netsOf(members: readonly Member[], hops: Lists, size: number): Int32Array {
  const net = new Int32Array(size).fill(-1);
  for (const { firstPin, pins } of members)
    for (let pin = firstPin; pin < firstPin + pins.length; pin++) net[pin] = pin;
  const rootOf = (pin: number): number => {
    let at = pin;
    while (net[at] !== at) {
      const up = net[at] as number;
      net[at] = net[up] as number;
      at = net[at] as number;
    }
    return at;
  };
  const { start, list } = hops;
  for (let pin = 0; pin < size; pin++) {
    for (let at = start[pin] as number; at < (start[pin + 1] as number); at += 2) {
      const other = list[at] as number;
      if (other < pin) continue;
      const [a, b] = [rootOf(pin), rootOf(other)];
      // The lowest number stands for all of them.
      if (a < b) net[b] = a;
      else net[a] = b;
    }
  }
  for (let pin = 0; pin < size; pin++) if (net[pin] !== -1) net[pin] = rootOf(pin);
  return net;
}
