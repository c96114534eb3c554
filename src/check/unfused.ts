import {
  ALWAYS,
  type Cube,
  createExplorer,
  doesWork,
  kindOf,
  LIES,
  type NetId,
  type Sight,
  type Way,
} from "../circuit/index.ts";
import { ownerOf, type PinRef } from "../job/index.ts";
import { MOST_NETS, passing } from "./passing.ts";

interface At {
  readonly net: NetId;
  readonly cube: Cube;
  /** The contact or other element that it was come to by; null at the battery. */
  readonly via: Way | null;
}

/**
 * Loads and module pins that a battery's plus comes to, in some state, over no fuse or breaker. What
 * is often fed without one on any machine is left out, and all past a point from which an untraced
 * line goes on.
 */
export function fedUnfused(sight: Sight, plus: PinRef): readonly string[] {
  const net = sight.netOf(plus);
  // Of several batteries side by side the first speaks for all; with plus on chassis the fuses are at minus.
  if (net === undefined || sight.source(net) !== plus || (sight.lies(net) & LIES.chassis) !== 0)
    return [];
  const explorer = createExplorer(sight, null);
  const fed = new Set<string>();
  const seen = new Set([net]);
  const queue: At[] = [{ net, cube: ALWAYS, via: null }];
  for (const at of queue) {
    const lies = sight.lies(at.net);
    if ((lies & LIES.untraced) !== 0 || sight.ground(at.net) !== null) continue;
    if ((lies & LIES.module) !== 0)
      for (const { pin, terminal } of sight.terminals(at.net))
        if (terminal === "module") fed.add(pin);
    for (const way of sight.ways(at.net)) {
      const { law, part } = way.element;
      if (doesWork(law)) {
        if (!isOftenUnfused(sight, way, at.via)) fed.add(part);
        continue;
      }
      if (law.is === "protection" || seen.has(way.far) || seen.size > MOST_NETS) continue;
      const cube = passing(explorer, way, "out", at.cube);
      if (!cube) continue;
      seen.add(way.far);
      queue.push({ net: way.far, cube, via: way });
    }
  }
  return [...fed];
}

function isOftenUnfused(sight: Sight, { element, from }: Way, via: Way | null): boolean {
  const part = sight.part(ownerOf(from));
  const how = part && kindOf(part.kind).oftenUnfused;
  if (how === "behind-relay") return via?.element.law.is === "relay-contact";
  return how === "always" && element.law.is === "load";
}
