import type { Point } from "../../base/index.ts";
import { NearStretches } from "../near-stretches.ts";
import type { Branch } from "./branch.ts";
import type { Links } from "./links.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";

/** In line widths: how near a line is what was meant. */
const NEAR = 2;

/**
 * The places of lines that the user said are none: of each, all from the joint or end before the place
 * to the one behind it, over crossings, bumps and holes that were passed: what is shown as one stretch goes.
 */
export function strayPlaces(
  { lineWidth }: PreparedPage,
  skeleton: Skeleton,
  links: Links,
  strays: readonly Point[],
): ReadonlySet<number> {
  const gone = new Set<number>();
  const onward = passesOf(links);
  const near = new NearStretches(skeleton);
  const done = new Set<number>();
  for (const at of strays) {
    const nearest = stretchNear(skeleton, links, near, at, NEAR * lineWidth);
    if (nearest === null || done.has(nearest)) continue;
    done.add(nearest);
    const run = runThrough(nearest, onward);
    for (const stretch of [...run, ...bumpsAlong(run, links)]) {
      const { pixels, from, to } = skeleton.stretches[stretch] as Stretch;
      for (const place of pixels) gone.add(place);
      for (const node of [from, to]) {
        const { stretches, pixels: tip } = skeleton.nodes[node] as SkeletonNode;
        if (stretches.length === 1) for (const place of tip) gone.add(place);
      }
    }
  }
  return gone;
}

const nameOf = ({ stretch, isFrom }: Branch) => 2 * stretch + (isFrom ? 1 : 0);

/** Of each end that goes on, over other ink, a hole or a bump of its own, the end that it goes on with. */
function passesOf({ passes, junctions }: Links): ReadonlyMap<number, Branch> {
  const onward = new Map<number, Branch>();
  for (const { ends } of [...passes, ...junctions]) {
    const [a, b, ...more] = ends;
    if (!a || !b || more.length > 0) continue;
    onward.set(nameOf(a), b);
    onward.set(nameOf(b), a);
  }
  return onward;
}

/** Bumps where two ends of a run meet, which cut no line in two. */
const bumpsAlong = (run: ReadonlySet<number>, { junctions }: Links): readonly number[] =>
  junctions.flatMap(({ ends, bumps }) =>
    ends.length === 2 && ends.every(({ stretch }) => run.has(stretch)) ? bumps : [],
  );

function runThrough(first: number, onward: ReadonlyMap<number, Branch>): ReadonlySet<number> {
  const run = new Set([first]);
  for (const isFrom of [true, false]) {
    for (let end: Branch | undefined = { stretch: first, isFrom }; end; ) {
      const next = onward.get(nameOf(end));
      if (!next || run.has(next.stretch)) break;
      run.add(next.stretch);
      end = { stretch: next.stretch, isFrom: !next.isFrom };
    }
  }
  return run;
}

/** The nearest line: a bump at its ragged end is nearer, but is not it. */
function stretchNear(
  { stretches, width }: Skeleton,
  { bumps }: Links,
  near: NearStretches,
  [x, y]: Point,
  reach: number,
): number | null {
  let [best, nearest]: [number | null, number] = [null, reach];
  for (const stretch of near.around([x, y], reach)) {
    if (bumps.has(stretch)) continue;
    for (const place of (stretches[stretch] as Stretch).pixels) {
      const far = Math.hypot((place % width) - x, Math.floor(place / width) - y);
      if (far < nearest) [best, nearest] = [stretch, far];
    }
  }
  return best;
}
