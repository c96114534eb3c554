import { asPart, type Sliced } from "../sliced.ts";
import { withoutStretches } from "./fewer-stretches.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode } from "./skeleton.ts";

/** In line widths: half of it lies within the line that it leaves, so that it hardly sticks out. */
const SPUR = 1.3;
/** Nodes looked at in a slice. */
const SLICE = 20_000;

/**
 * The lines of a page without the spurs that a ragged rim gives them when they are thinned: they cut a
 * line into short pieces, of which none looks like a line. What ends where `isKept` says so is none: a
 * line stops there.
 */
export function* withoutSpurs(
  { lineWidth }: PreparedPage,
  skeleton: Skeleton,
  isKept: (node: SkeletonNode) => boolean,
): Sliced<Skeleton> {
  const { nodes, stretches } = skeleton;
  const isSpur = (stretch: number) => {
    const one = stretches[stretch];
    if (!one || one.length > SPUR * lineWidth || one.from === one.to) return false;
    const [from, to] = [nodes[one.from] as SkeletonNode, nodes[one.to] as SkeletonNode];
    const [end, fork] = from.stretches.length === 1 ? [from, to] : [to, from];
    return end.stretches.length === 1 && fork.stretches.length === 3 && !isKept(end);
  };
  const spurs = new Set<number>();
  for (let node = 0; node < nodes.length; node++) {
    if (node % SLICE === SLICE - 1) yield (0.3 * node) / nodes.length;
    const met = (nodes[node] as SkeletonNode).stretches;
    if (met.length !== 3) continue;
    const found = met.filter(isSpur);
    // Two of them are the ragged end of a line.
    if (found.length === 1) spurs.add(found[0] as number);
  }
  if (spurs.size === 0) return skeleton;
  return yield* asPart(withoutStretches(skeleton, spurs, 0), 0.3, 1);
}
