import type { NetFacts } from "./facts.ts";
import type { Joined } from "./joined.ts";
import { LIES } from "./lies.ts";
import { PASSES } from "./member.ts";
import type { Space } from "./space.ts";

/**
 * 1 for each net from which current that has come to a ground point can get back to a battery.
 * Battery minus joins chassis, and engine, cab and frame join one another, only where that is
 * drawn. Where no battery is drawn, or one whose minus leads nowhere yet, nobody can tell: then it can.
 */
export function waysBack(
  joined: Joined,
  { lies }: NetFacts,
  kept: Space,
  scratch: Space,
): Uint8Array {
  const { roster, netOf, far, hops, ways, size } = joined;
  const seen = kept.flags(size);
  const minuses = roster.batteries.flatMap(({ terminals }) =>
    terminals.filter(({ terminal }) => terminal === "battery-minus").map(({ pin }) => pin),
  );
  const isOpen = minuses.some((pin) => hops.start[pin] === hops.start[pin + 1]);
  if (minuses.length === 0 || isOpen) return seen.fill(1);
  const queue = scratch.unset(size);
  let length = 0;
  const visit = (net: number) => {
    if (seen[net]) return;
    seen[net] = 1;
    queue[length++] = net;
  };
  for (const pin of minuses) visit(netOf[pin] as number);
  for (let net = 0; net < size; net++) {
    // A ground beyond the page, or a line that goes on there, may well be joined to it.
    if (netOf[net] === net && (lies[net] as number) & LIES.pageEnd) visit(net);
  }
  const { passes } = joined.elements;
  for (let head = 0; head < length; head++) {
    const net = queue[head] as number;
    for (let at = ways.start[net] as number; at < (ways.start[net + 1] as number); at++) {
      const way = ways.list[at] as number;
      const how = passes[way >> 1];
      if (how === PASSES.either || how === PASSES.relay || how === PASSES.diode)
        visit(far[way] as number);
    }
  }
  return seen;
}
