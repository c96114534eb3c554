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
import type { Roster } from "./roster.ts";

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
  readonly roster: Roster;
  readonly elements: ElementColumns;
  /** Net of each pin, by the lowest number among its pins; −1 where there is no such pin any more. */
  readonly netOf: Int32Array;
  /** Ways out of each net in the order of the drawing: twice the element's number, one more from `b`. */
  readonly ways: Lists;
  /** Pins of each net that are more than the end of an element, as the roster has them. */
  readonly terminals: Lists;
  /** For each pin, pairs of the pin hopped to and the wire's number; −1 where no wire is seen. */
  readonly hops: Lists;
  /** The net at the far end of each way. */
  readonly far: Int32Array;
  /** How many pins each net has. */
  readonly pinCount: Int32Array;
}

export function joinUp(
  roster: Roster,
  elements: ElementColumns,
  wires: readonly MemberWire[],
): Joined {
  const size = roster.pins.length;
  const hops = hopsOf(wires, roster.joins, size);
  const netOf = netsOf(roster.pins, hops);
  const pinCount = new Int32Array(size);
  for (let pin = 0; pin < size; pin++) {
    const net = netOf[pin] as number;
    if (net >= 0) pinCount[net] = (pinCount[net] as number) + 1;
  }
  const { far, ways } = waysOf(elements, netOf);
  const { terminals: entries } = roster;
  const terminals = gather(
    size,
    entries.map((entry) => netOf[entry >> 1] as number),
    entries,
  );
  return { size, roster, elements, netOf, far, ways, terminals, hops, pinCount };
}

/** Each number put to the one at the same place of `to`; each list is in the order of the numbers. */
export function gather(size: number, to: Int32Array, numbers: Int32Array): Lists {
  const start = new Int32Array(size + 1);
  for (let at = 0; at < to.length; at++) {
    const after = (to[at] as number) + 1;
    start[after] = (start[after] as number) + 1;
  }
  for (let n = 0; n < size; n++) start[n + 1] = (start[n + 1] as number) + (start[n] as number);
  const next = start.slice(0, size);
  const list = new Int32Array(to.length);
  for (let at = 0; at < to.length; at++) {
    const one = to[at] as number;
    const place = next[one] as number;
    list[place] = numbers[at] as number;
    next[one] = place + 1;
  }
  return { start, list };
}

function hopsOf(wires: readonly MemberWire[], joins: readonly number[], size: number): Lists {
  const most = 4 * wires.length + 2 * joins.length;
  const pins = new Int32Array(most);
  const numbers = new Int32Array(most);
  let count = 0;
  const hop = (from: number, to: number, wire: number) => {
    pins[count] = from;
    numbers[count++] = to;
    pins[count] = from;
    numbers[count++] = wire;
  };
  for (const { from, to, number } of wires) {
    hop(from, to, number);
    hop(to, from, number);
  }
  for (let at = 0; at < joins.length; at += 2) {
    const a = joins[at] as number;
    const b = joins[at + 1] as number;
    hop(a, b, -1);
    hop(b, a, -1);
  }
  return gather(size, pins, numbers);
}

function netsOf(pins: Int32Array, hops: Lists): Int32Array {
  const net = pins.slice();
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
  for (let pin = 0; pin < net.length; pin++) {
    for (let at = start[pin] as number; at < (start[pin + 1] as number); at += 2) {
      const other = list[at] as number;
      if (other < pin) continue;
      const a = rootOf(pin);
      const b = rootOf(other);
      // The lowest number stands for all of them.
      if (a < b) net[b] = a;
      else net[a] = b;
    }
  }
  for (let pin = 0; pin < net.length; pin++) if (net[pin] !== -1) net[pin] = rootOf(pin);
  return net;
}

function waysOf({ a, b, order, count }: ElementColumns, netOf: Int32Array) {
  const far = new Int32Array(2 * count);
  const nets = new Int32Array(2 * order.length);
  const ways = new Int32Array(2 * order.length);
  for (let at = 0; at < order.length; at++) {
    const number = order[at] as number;
    const netA = netOf[a[number] as number] as number;
    const netB = netOf[b[number] as number] as number;
    far[2 * number] = netB;
    far[2 * number + 1] = netA;
    nets[2 * at] = netA;
    ways[2 * at] = 2 * number;
    nets[2 * at + 1] = netB;
    ways[2 * at + 1] = 2 * number + 1;
  }
  return { far, ways: gather(netOf.length, nets, ways) };
}
