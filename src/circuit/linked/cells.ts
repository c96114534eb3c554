import type { NetFacts } from "./facts.ts";
import type { Joined, Lists } from "./joined.ts";

/**
 * Every fact of the circuit that a question can look at has a cell, and every cell the revision at
 * which the fact last changed. A question that notes the cells it looked at is answered once; its
 * answer holds for as long as none of them has changed since. Numbered by a net's or pin's number
 * and one of these.
 */
export const CELL = {
  ways: 0,
  terminals: 1,
  fixed: 2,
  lies: 3,
  rails: 4,
  rootwardIn: 5,
  rootwardOut: 6,
  back: 7,
  net: 8,
  hops: 9,
  ring: 10,
  /** Any hop between any pins of a net. */
  inside: 11,
  /** Of the circuit as a whole, at number 0: whether any battery stands on another. */
  raised: 12,
} as const;

export const CELLS = 13;

/** One state of the circuit: all that cells are about. */
export interface Linked {
  readonly joined: Joined;
  readonly facts: NetFacts;
  readonly rootwardIn: Uint8Array;
  readonly rootwardOut: Uint8Array;
  readonly back: Uint8Array;
  readonly rings: ReadonlySet<number>;
}

/** Calls `changed` for every cell whose fact is not the same in both states; some that are may be among them. */
export function compareCells(
  before: Linked,
  after: Linked,
  changed: (index: number, cell: number) => void,
): void {
  const [old, now] = [before.joined, after.joined];
  const ofNet = netComparer(before, after, changed);
  if (before.facts.raised.size > 0 !== after.facts.raised.size > 0) changed(0, CELL.raised);
  for (let index = 0; index < now.size; index++) {
    const isOld = index < old.size;
    const net = now.netOf[index] as number;
    const oldNet = isOld ? (old.netOf[index] as number) : -1;
    if (net !== oldNet) changed(index, CELL.net);
    const sameHops = isOld && sameLists(old.hops, now.hops, index);
    if (!sameHops) {
      changed(index, CELL.hops);
      if (net >= 0) changed(net, CELL.inside);
    }
    if (before.rings.has(index) !== after.rings.has(index)) changed(index, CELL.ring);
    if (net === index || oldNet === index) {
      if (net === oldNet) ofNet(index);
      else for (let cell = CELL.ways; cell <= CELL.back; cell++) changed(index, cell);
      if (net !== oldNet) changed(index, CELL.inside);
    }
  }
}

/** Compares what is known of a net that is there in both states. */
function netComparer(
  { joined: old, facts: oldFacts, ...before }: Linked,
  { joined: now, facts, ...after }: Linked,
  changed: (net: number, cell: number) => void,
): (net: number) => void {
  return (net) => {
    const start = now.ways.start[net] as number;
    const end = now.ways.start[net + 1] as number;
    const shift = (old.ways.start[net] as number) - start;
    let sameWays = (old.ways.start[net + 1] as number) - end === shift;
    for (let at = start; sameWays && at < end; at++) {
      const way = now.ways.list[at] as number;
      sameWays = old.ways.list[at + shift] === way && old.far[way] === now.far[way];
    }
    if (!sameWays) changed(net, CELL.ways);
    // On a bus branches come and go all the time, and what feeds it stays.
    if (!sameRootward(old, before.rootwardIn, now, after.rootwardIn, net))
      changed(net, CELL.rootwardIn);
    if (!sameRootward(old, before.rootwardOut, now, after.rootwardOut, net))
      changed(net, CELL.rootwardOut);
    const sameTerminals = sameLists(old.terminals, now.terminals, net);
    if (!sameTerminals) changed(net, CELL.terminals);
    if (oldFacts.source[net] !== facts.source[net] || oldFacts.ground[net] !== facts.ground[net])
      changed(net, CELL.fixed);
    if (oldFacts.lies[net] !== facts.lies[net]) changed(net, CELL.lies);
    const areRails = oldFacts.mayFeed[net] || facts.mayFeed[net];
    if (areRails && !(sameWays && sameTerminals)) changed(net, CELL.rails);
    if (before.back[net] !== after.back[net]) changed(net, CELL.back);
  };
}

/** Whether the allowed ones among a net's ways are the same. */
function sameRootward(
  old: Joined,
  was: Uint8Array,
  now: Joined,
  is: Uint8Array,
  net: number,
): boolean {
  let at = old.ways.start[net] as number;
  const oldEnd = old.ways.start[net + 1] as number;
  const skip = () => {
    while (at < oldEnd && was[old.ways.list[at] as number] !== 1) at++;
  };
  skip();
  for (let n = now.ways.start[net] as number; n < (now.ways.start[net + 1] as number); n++) {
    const way = now.ways.list[n] as number;
    if (is[way] !== 1) continue;
    if (at >= oldEnd || old.ways.list[at] !== way || old.far[way] !== now.far[way]) return false;
    at++;
    skip();
  }
  return at >= oldEnd;
}

function sameLists(old: Lists, now: Lists, index: number): boolean {
  const start = now.start[index] as number;
  const end = now.start[index + 1] as number;
  const shift = (old.start[index] as number) - start;
  if ((old.start[index + 1] as number) - end !== shift) return false;
  for (let at = start; at < end; at++) if (old.list[at + shift] !== now.list[at]) return false;
  return true;
}
