import type { Point } from "../../base/index.ts";
import { type Branch, bendBetween, headingOf, placesAlong } from "./branch.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton } from "./skeleton.ts";
import type { Zone } from "./zones.ts";

/** In line widths: so much round a place is its own, and so much of a line is looked at. */
const FREE = 0.6;
const LOOKED_ALONG = 4;
/** Degrees: what bends more is not one line. */
const STRAIGHT_ON = 45;

/** The pairs of branches that go straight through a place, the straightest first. */
export function straightThrough(
  { lineWidth }: PreparedPage,
  skeleton: Skeleton,
  { at, radius, branches }: Zone,
): (readonly [Branch, Branch])[] {
  const near = radius + FREE * lineWidth;
  const ways = branches.map((branch) => {
    const points = placesAlong(skeleton, branch);
    return headingOf(points, at, near, near + LOOKED_ALONG * lineWidth)?.along ?? null;
  });
  const bends: { a: number; b: number; bend: number }[] = [];
  for (let a = 0; a < ways.length; a++) {
    for (let b = a + 1; b < ways.length; b++) {
      if (!ways[a] || !ways[b]) continue;
      const bend = bendBetween(ways[a] as Point, ways[b] as Point);
      if (bend <= STRAIGHT_ON) bends.push({ a, b, bend });
    }
  }
  const used = new Set<number>();
  return bends
    .sort((one, other) => one.bend - other.bend)
    .flatMap(({ a, b }) => {
      if (used.has(a) || used.has(b)) return [];
      used.add(a).add(b);
      return [[branches[a] as Branch, branches[b] as Branch] as const];
    });
}
