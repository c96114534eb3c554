import { Groups, type Point } from "../../base/index.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { type Branch, bendBetween } from "./branch.ts";
import { CROWDED, type ForkPlaces } from "./fork-places.ts";
import { type Headings, nodeOf } from "./headings.ts";
import { LETTER_STROKE } from "./letter-stroke.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";

/** In line widths: thinning forks the ragged end of a line into tips no longer than this. */
export const TIP = 1.5;
/** Degrees that a line may turn where it goes on through a place. */
export const GOES_ON = 25;
/** Stretches looked at in a slice. */
const STRETCHES = 500;
/** ... and of those of which only the ends are looked at. */
const MANY = 20_000;

/** Stretches that are long, that end at a part, or in which such go straight on. */
export function* linesAmong(
  page: PreparedPage,
  skeleton: Skeleton,
  { placeOf, leaving }: ForkPlaces,
  headings: Headings,
  atParts: ReadonlySet<number>,
): Sliced<ReadonlySet<number>> {
  const { lineWidth } = page;
  const { stretches } = skeleton;
  const lines: number[] = [];
  const isLine = new Set<number>();
  const add = (stretch: number) => {
    if (isLine.has(stretch)) return;
    isLine.add(stretch);
    lines.push(stretch);
  };
  stretches.forEach(({ from, to, length }, stretch) => {
    if (length > LETTER_STROKE * lineWidth || atParts.has(from) || atParts.has(to)) add(stretch);
  });
  /** What leaves the same fork before what leaves others of its place. */
  const straightOn = (
    came: Branch,
    others: readonly Branch[],
    wayOf: (branch: Branch) => Point | null,
  ): number | null => {
    const way = wayOf(came);
    if (!way) return null;
    const fork = nodeOf(skeleton, came);
    let best: { stretch: number; bend: number; isNear: boolean } | null = null;
    for (const other of others) {
      if (other.stretch === came.stretch) continue;
      const ahead = wayOf(other);
      const bend = ahead ? bendBetween(way, ahead) : 180;
      if (bend > GOES_ON) continue;
      const isNear = nodeOf(skeleton, other) === fork;
      const isBetter = best === null || (isNear === best.isNear ? bend < best.bend : isNear);
      if (isBetter) best = { stretch: other.stretch, bend, isNear };
    }
    return best?.stretch ?? null;
  };
  for (const stretch of frayedLines(skeleton, leaving, headings, lineWidth)) add(stretch);
  for (let n = 0; n < lines.length; n++) {
    if (n % STRETCHES === STRETCHES - 1) yield n / stretches.length;
    const stretch = lines[n] as number;
    const { from, to } = stretches[stretch] as Stretch;
    for (const isFrom of [true, false]) {
      const place = placeOf(isFrom ? from : to);
      const others = leaving.get(place) ?? [];
      if (others.length < 3 || others.length > CROWDED) continue;
      const came = { stretch, isFrom };
      // A corner a little farther on bends what is seen of a line.
      const best =
        straightOn(came, others, (branch) => headings.wayOf(branch)) ??
        straightOn(came, others, (branch) => headings.startOf(branch));
      if (best !== null) add(best);
    }
  }
  for (const stretch of yield* asPart(withinLines(skeleton, isLine, placeOf), 0.5, 1))
    isLine.add(stretch);
  return isLine;
}

/** Strokes that go straight on in one another past nothing but tips and are long together: a line that grain frayed. */
function frayedLines(
  { stretches }: Skeleton,
  leaving: ReadonlyMap<number, readonly Branch[]>,
  headings: Headings,
  lineWidth: number,
): number[] {
  const chains = new Groups(stretches.length);
  const strokes = new Set<number>();
  for (const branches of leaving.values()) {
    if (branches.length < 3 || branches.length > CROWDED) continue;
    const long = branches.filter(
      ({ stretch }) => (stretches[stretch] as Stretch).length > TIP * lineWidth,
    );
    const [a, b] = long;
    if (long.length !== 2 || !a || !b) continue;
    const [there, on] = [headings.wayOf(a), headings.wayOf(b)];
    if (!there || !on || bendBetween(there, on) > GOES_ON) continue;
    chains.join(a.stretch, b.stretch);
    strokes.add(a.stretch).add(b.stretch);
  }
  const long = new Map<number, number>();
  for (const stretch of strokes) {
    const chain = chains.of(stretch);
    long.set(chain, (long.get(chain) ?? 0) + (stretches[stretch] as Stretch).length);
  }
  return [...strokes].filter(
    (stretch) => (long.get(chains.of(stretch)) as number) > LETTER_STROKE * lineWidth,
  );
}

/** Stretches within a place that lead from line to line. */
function* withinLines(
  { stretches, nodes }: Skeleton,
  isLine: ReadonlySet<number>,
  placeOf: (node: number) => number,
): Sliced<ReadonlySet<number>> {
  const within = new Set<number>();
  for (let stretch = 0; stretch < stretches.length; stretch++) {
    if (stretch % MANY === MANY - 1) yield (0.3 * stretch) / stretches.length;
    const { from, to } = stretches[stretch] as Stretch;
    if (from !== to && placeOf(from) === placeOf(to) && !isLine.has(stretch)) within.add(stretch);
  }
  // What leads nowhere is the foot of a letter.
  const leadsNowhere = (node: number) => {
    let count = 0;
    for (const one of (nodes[node] as SkeletonNode).stretches) {
      if (isLine.has(one)) return false;
      if (within.has(one)) count++;
    }
    return count < 2;
  };
  const left = [...within];
  let looked = 0;
  for (let one = left.pop(); one !== undefined; one = left.pop()) {
    if (++looked % MANY === 0) yield 1 - 0.7 / (1 + looked / stretches.length);
    const { from, to } = stretches[one] as Stretch;
    if (!within.has(one) || !(leadsNowhere(from) || leadsNowhere(to))) continue;
    within.delete(one);
    for (const node of [from, to]) {
      for (const next of (nodes[node] as SkeletonNode).stretches) left.push(next);
    }
  }
  return within;
}
