import type { NetFacts } from "./facts.ts";
import type { Joined } from "./joined.ts";
import type { Lists } from "./lists.ts";

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
  readonly rings: Uint8Array;
}

/** Calls `changed` for every cell whose fact is not the same in both states; some that are may be among them. */
export function compareCells(
  before: Linked,
  after: Linked,
  changed: (index: number, cell: number) => void,
): void {
  const [old, now] = [before.joined, after.joined];
  if (before.facts.raised.size > 0 !== after.facts.raised.size > 0) changed(0, CELL.raised);
  const known = Math.min(old.size, now.size);
  for (let index = 0; index < now.size; index++) {
    const net = now.netOf[index] as number;
    const oldNet = index < known ? (old.netOf[index] as number) : -1;
    if (net !== oldNet) changed(index, CELL.net);
    if (index >= known || !sameLists(old.hops, now.hops, index)) {
      changed(index, CELL.hops);
      if (net >= 0) changed(net, CELL.inside);
    }
    const wasInRing = index < known ? before.rings[index] : 0;
    if (wasInRing !== after.rings[index]) changed(index, CELL.ring);
    if (net !== index && oldNet !== index) continue;
    if (net === oldNet) compareNet(before, after, net, changed);
    else {
      for (let cell = CELL.ways; cell <= CELL.back; cell++) changed(index, cell);
      changed(index, CELL.inside);
    }
  }
}

/** Compares what is known of a net that is there in both states. */
function compareNet(
  before: Linked,
  after: Linked,
  net: number,
  changed: (net: number, cell: number) => void,
): void {
  const old = before.joined;
  const now = after.joined;
  const oldFacts = before.facts;
  const facts = after.facts;
  const sameWays = haveSameWays(old, now, net);
  if (!sameWays) changed(net, CELL.ways);
  // On a bus branches come and go all the time, and what feeds it stays.
  if (!haveSameRootward(before, after, "rootwardIn", net, sameWays)) changed(net, CELL.rootwardIn);
  if (!haveSameRootward(before, after, "rootwardOut", net, sameWays))
    changed(net, CELL.rootwardOut);
  const sameTerminals = sameLists(old.terminals, now.terminals, net);
  if (!sameTerminals) changed(net, CELL.terminals);
  if (oldFacts.source[net] !== facts.source[net] || oldFacts.ground[net] !== facts.ground[net])
    changed(net, CELL.fixed);
  if (oldFacts.lies[net] !== facts.lies[net]) changed(net, CELL.lies);
  const areRails = oldFacts.mayFeed[net] || facts.mayFeed[net];
  if (areRails && !(sameWays && sameTerminals)) changed(net, CELL.rails);
  if (before.back[net] !== after.back[net]) changed(net, CELL.back);
}

function haveSameWays(old: Joined, now: Joined, net: number): boolean {
  if (!sameLists(old.ways, now.ways, net)) return false;
  const { start, list } = now.ways;
  const end = start[net + 1] as number;
  for (let at = start[net] as number; at < end; at++) {
    const way = list[at] as number;
    if (old.far[way] !== now.far[way]) return false;
  }
  return true;
}

/** Whether the allowed ones among a net's ways are the same. */
function haveSameRootward(
  before: Linked,
  after: Linked,
  field: "rootwardIn" | "rootwardOut",
  net: number,
  sameWays: boolean,
): boolean {
  if (!sameWays) return haveSameAllowed(before, after, field, net);
  const was = before[field];
  const is = after[field];
  const { start, list } = after.joined.ways;
  const end = start[net + 1] as number;
  for (let at = start[net] as number; at < end; at++) {
    const way = list[at] as number;
    if (was[way] !== is[way]) return false;
  }
  return true;
}

/** The same where ways have come or gone; apart, so that what is asked of every net makes no garbage. */
function haveSameAllowed(
  before: Linked,
  after: Linked,
  field: "rootwardIn" | "rootwardOut",
  net: number,
): boolean {
  const old = before.joined;
  const now = after.joined;
  const was = before[field];
  const is = after[field];
  const { start, list } = now.ways;
  const end = start[net + 1] as number;
  let oldAt = old.ways.start[net] as number;
  const oldEnd = old.ways.start[net + 1] as number;
  const skip = () => {
    while (oldAt < oldEnd && was[old.ways.list[oldAt] as number] !== 1) oldAt++;
  };
  skip();
  for (let at = start[net] as number; at < end; at++) {
    const way = list[at] as number;
    if (is[way] !== 1) continue;
    if (oldAt >= oldEnd || old.ways.list[oldAt] !== way || old.far[way] !== now.far[way])
      return false;
    oldAt++;
    skip();
  }
  return oldAt >= oldEnd;
}

function sameLists(old: Lists, now: Lists, index: number): boolean {
  const start = now.start[index] as number;
  const end = now.start[index + 1] as number;
  const shift = (old.start[index] as number) - start;
  if ((old.start[index + 1] as number) - end !== shift) return false;
  for (let at = start; at < end; at++) if (old.list[at + shift] !== now.list[at]) return false;
  return true;
}
