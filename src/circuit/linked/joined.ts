/**
 * Wires, chassis places and page ends merged into nets, in numbers alone.
 *
 * Pins, elements and wires have numbers that they keep from one state of the drawing to the next; a
 * net goes by the lowest number among its pins, so that what an edit does not touch keeps its
 * numbers and can be told to be the same by comparing them. Everything here takes time in
 * proportion to the drawing and holds no objects: a machine of 10,000 wires is joined up in a few
 * milliseconds. So loops are over numbers by their places, and arrays come from a `Space`: what a
 * state of the drawing is kept in, or what is needed only while it is made.
 */
import { Groups } from "../../base/index.ts";
import type { ElementColumns } from "./element-table.ts";
import { gather, type Lists } from "./lists.ts";
import type { Roster } from "./roster.ts";
import type { Space } from "./space.ts";
import type { WireColumns } from "./wire-table.ts";

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

/** `kept`: where the state lies; `scratch`: free again afterwards. */
export function joinUp(
  roster: Roster,
  elements: ElementColumns,
  wires: WireColumns,
  kept: Space,
  scratch: Space,
): Joined {
  const size = roster.pins.length;
  const hops = hopsOf(wires, roster.joins, size, kept, scratch);
  const netOf = netsOf(roster.pins, hops, kept, scratch);
  const pinCount = kept.zeros(size);
  for (let pin = 0; pin < size; pin++) {
    const net = netOf[pin] as number;
    if (net >= 0) pinCount[net] = (pinCount[net] as number) + 1;
  }
  const { terminals: entries } = roster;
  const nets = scratch.unset(entries.length);
  for (let at = 0; at < entries.length; at++)
    nets[at] = netOf[(entries[at] as number) >> 1] as number;
  const terminals = gather(size, nets, entries, kept);
  const { far, ways } = waysOf(elements, netOf, kept, scratch);
  return { size, roster, elements, netOf, far, ways, terminals, hops, pinCount };
}

function hopsOf(
  { from, to, numbers: wires, count }: WireColumns,
  joins: Int32Array,
  size: number,
  kept: Space,
  scratch: Space,
): Lists {
  const most = 4 * count + 2 * joins.length;
  const pins = scratch.unset(most);
  const numbers = scratch.unset(most);
  let length = 0;
  const hop = (a: number, b: number, wire: number) => {
    pins[length] = a;
    numbers[length++] = b;
    pins[length] = a;
    numbers[length++] = wire;
  };
  for (let at = 0; at < count; at++) {
    const wire = wires[at] as number;
    if (wire < 0) continue;
    hop(from[at] as number, to[at] as number, wire);
    hop(to[at] as number, from[at] as number, wire);
  }
  for (let at = 0; at < joins.length; at += 2) {
    hop(joins[at] as number, joins[at + 1] as number, -1);
    hop(joins[at + 1] as number, joins[at] as number, -1);
  }
  return gather(size, pins.subarray(0, length), numbers, kept);
}

function netsOf(pins: Int32Array, { start, list }: Lists, kept: Space, scratch: Space): Int32Array {
  const size = pins.length;
  const together = new Groups(size, scratch.unset(size));
  for (let pin = 0; pin < size; pin++) {
    for (let at = start[pin] as number; at < (start[pin + 1] as number); at += 2) {
      const other = list[at] as number;
      if (other < pin) continue;
      const a = together.of(pin);
      const b = together.of(other);
      // The lowest number stands for all of them.
      if (a < b) together.join(b, a);
      else together.join(a, b);
    }
  }
  const net = kept.unset(size);
  for (let pin = 0; pin < size; pin++) net[pin] = pins[pin] === -1 ? -1 : together.of(pin);
  return net;
}

function waysOf(
  { a, b, order, count }: ElementColumns,
  netOf: Int32Array,
  kept: Space,
  scratch: Space,
) {
  const far = kept.unset(2 * count);
  const nets = scratch.unset(2 * order.length);
  const ways = scratch.unset(2 * order.length);
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
  return { far, ways: gather(netOf.length, nets, ways, kept) };
}
