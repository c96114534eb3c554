import { addTo, Groups } from "../../base/index.ts";
import type { Branch } from "./branch.ts";
import type { Skeleton, SkeletonNode } from "./skeleton.ts";

/** No place has so many lines: it is grain or tone, where all of them against one another take minutes. */
export const CROWDED = 64;

/** Forks so near to one another that they are one place, and what leaves such a place. */
export interface ForkPlaces {
  readonly placeOf: (node: number) => number;
  /** By place; what lies within it left out. */
  readonly leaving: ReadonlyMap<number, readonly Branch[]>;
}

export function placesOfForks({ stretches, nodes }: Skeleton, near: number): ForkPlaces {
  const groups = new Groups(nodes.length);
  const isFork = (node: number) => (nodes[node] as SkeletonNode).stretches.length > 2;
  for (const { from, to, length } of stretches) {
    if (from !== to && length < near && isFork(from) && isFork(to)) groups.join(from, to);
  }
  const placeOf = (node: number) => groups.of(node);
  const leaving = new Map<number, Branch[]>();
  stretches.forEach(({ from, to, length }, stretch) => {
    if (length < near && placeOf(from) === placeOf(to)) return;
    for (const isFrom of [true, false]) {
      addTo(leaving, placeOf(isFrom ? from : to), { stretch, isFrom });
    }
  });
  return { placeOf, leaving };
}
