import { distance, type Point } from "../../base/index.ts";
import { hasDarkDisc, hasDot, isSolid } from "./blob.ts";
import { type Branch, bendBetween, type Heading, headingOf, lengthOf } from "./branch.ts";
import { cornerInk } from "./corner-ink.ts";
import { darkness } from "./darkness.ts";
import { CROWDED } from "./fork-places.ts";
import { LETTER_STROKE } from "./letter-stroke.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";
import { faintOne } from "./smear.ts";
import type { SolidInk } from "./solid-ink.ts";
import { straightPairs } from "./straight-pairs.ts";
import { strokeBetween } from "./stroke-between.ts";
import type { Ways } from "./ways.ts";
import type { Zone } from "./zones.ts";

/** What lines do where they meet. */
export type Joint = {
  /** As `cornerInk` measures it, where two lines meet that go straight on; else null. */
  readonly corners: number | null;
} & (
  | /** All are one. */
  { readonly kind: "joined" }
  /** They go straight through one another, each pair a line of its own. */
  | { readonly kind: "crossing"; readonly pairs: readonly (readonly [Branch, Branch])[] }
  /** It may be either; `isLikelier` says which one it looks like. */
  | {
      readonly kind: "doubtful";
      readonly pairs: readonly (readonly [Branch, Branch])[];
      readonly isLikelier: "joined" | "crossing";
    }
);

/**
 * Ink in the corners between two lines, as `cornerInk` measures it: up to `PLAIN` they cross, from `DOT` on
 * they are joined, between them it is asked, if no other place of the page tells. Both are set where drawn
 * pages of known nets, harmed at random, part: of 4600 crossings one in 300 has more than 0.26 and none
 * 0.45, of 290 dots one has less than 0.47.
 */
const PLAIN = 0.26;
const DOT = 0.46;
/**
 * Where lines have no such corners: half the largest disc of solid ink at a place, in widths of its
 * lines. Where two plain lines cross squarely it reaches their four inner corners, 0.71; ink that ran
 * makes it 0.9. A dot two and a half lines wide, which is small, has 1.25.
 */
const PLAIN_DISC = 1;
const SOLID_BLOB = 1.3;
/** ... and where lines meet that do not go straight on, it may be letters' ink up to that. */
const TANGLE_DOT = 1.4;

/** In line widths: a line that comes to a dot is thinned to a place so near to the dot's edge. */
const BESIDE_BLOB = 1.5;

/** On rough paper only as much ink in the corners between two lines is a dot. */
const ROUGH_DOT = 0.75;

/**
 * In line widths: how far along each line is looked, how much round a place is its own, and on how
 * much of a line its heading is taken, and that with which it begins.
 */
const SEEN = 12;
const FREE = 0.6;
const HEADING = 3;
const FIRST = 1.5;

/** In line widths: a bump that sticks out of the middle of a line so far is no grain at its edge. */
const BUMP = 1.5;
/** ... and is so dark so far out, as shares of a line's middle and of it. */
const DARK = 0.6;
const OUT = 0.9;
/** Degrees: more than that between a line's two halves is no line that goes straight on. */
const STRAIGHT_ON = 30;
/** A line that jumps another leaves the place it jumps at a slant, both halves to the same side. */
const JUMPS = 130;
/** ... by so many degrees at least from the square, where only its first pieces are seen. */
const LEANS = 20;

export function jointAt(
  page: PreparedPage,
  ink: SolidInk,
  skeleton: Skeleton,
  zone: Zone,
  zones: ReadonlyMap<number, Zone>,
  through: Ways,
): Joint {
  const { branches, isOnRoughPaper } = zone;
  if (branches.length < 3) return { kind: "joined", corners: null };
  // Each line would be held against every other.
  if (branches.length > CROWDED)
    return { kind: "doubtful", pairs: [], isLikelier: "joined", corners: null };
  const { lineWidth } = page;
  const reach = zone.radius + SEEN * Math.max(lineWidth, ink.lineWidth);
  const ways = branches.map((branch) =>
    through.along(branch, zone.radius + SEEN * lineWidth, zone.at, reach),
  );
  if (branches.length === 3) {
    // Three lines are one, but for a smear of a word or a shadow: of that the picture tells too little.
    const smear =
      hasDot(zone) && isSolid(page, zone)
        ? null
        : (faintOne(page, zone, ways) ??
          strokeBetween(page, skeleton, zone, zones, ways) ??
          facedByBump(page, skeleton, zone, ways));
    if (smear === null) return { kind: "joined", corners: null };
    const [a, b] = branches.filter((_, n) => n !== smear) as [Branch, Branch];
    return { kind: "doubtful", pairs: [[a, b]], isLikelier: "crossing", corners: null };
  }
  const lines = branches.length === 4 ? [] : withoutStrokes(page, skeleton, zone);
  if (lines.length === 4)
    return jointAt(page, ink, skeleton, { ...zone, branches: lines }, zones, through);
  const near = zone.radius + FREE * lineWidth;
  const headingsFor = (from: number, length: number) =>
    ways.map(
      (way) =>
        headingOf(way, zone.at, from, near + length * lineWidth) ??
        headingOf(way, zone.at, 0, near + length * lineWidth),
    );
  const seen = cornerInk(ink, zone, ways);
  const looks = looksAt(page, zone, seen);
  if (looks === "dot" && !(isOnRoughPaper && seen !== null && seen < ROUGH_DOT))
    return isAllAtBlob(page, skeleton, zone)
      ? { kind: "joined", corners: seen }
      : { kind: "doubtful", pairs: [], isLikelier: "joined", corners: null };
  // On rough paper no other place tells what this one is.
  const corners = isOnRoughPaper ? null : seen;
  // A line may turn right behind the place: its first piece tells where it came from.
  const first = headingsFor(zone.radius, FIRST);
  // More than two lines hardly ever cross in one place: letters beside it made one place of two.
  const pairs =
    branches.length > 4 ? null : pairsOf(zone.at, branches, headingsFor(near, HEADING), first);
  const startOf = (way: Way): Way => ({
    ...way,
    along: first[branches.indexOf(way.branch)]?.along ?? way.along,
  });
  const starts = pairs?.map(([a, b]): Pair => [startOf(a), startOf(b)]) ?? [];
  const isOverHole = (branch: Branch) =>
    endOf(skeleton, branch).stretches.length === 1 &&
    (ways[branches.indexOf(branch)] as readonly Point[]).length >
      (skeleton.stretches[branch.stretch] as Stretch).pixels.length;
  const isStraight = (pair: Pair) => bendOf(pair) <= STRAIGHT_ON;
  if (
    pairs !== null &&
    (pairs.every(isStraight) || starts.every(isStraight) || isJump(pairs, starts, isOverHole))
  ) {
    const both = pairs.map(([a, b]) => [a.branch, b.branch] as const);
    if (looks === "plain") return { kind: "crossing", pairs: both, corners };
    return { kind: "doubtful", pairs: both, isLikelier: "crossing", corners };
  }
  // No two lines that cross: what their corners hold says nothing of a blob.
  const isBlob = () =>
    (zone.blob >= TANGLE_DOT * zone.lineWidth && isSolid(page, zone)) || hasDarkDisc(ink, zone);
  if (!isOnRoughPaper && isBlob() && isAllAtBlob(page, skeleton, zone))
    return { kind: "joined", corners: null };
  const straight = straightPairs(page, zone, branches, ways, SEEN);
  // A line that other lines cross is short here, and goes on behind them.
  const isStraightOn = new Set(straight.flat().map(({ stretch }) => stretch));
  const isLetter = (branch: Branch, n: number) =>
    !isStraightOn.has(branch.stretch) &&
    isShort(page, skeleton, branch) &&
    lengthOf(ways[n] as readonly Point[]) < LETTER_STROKE * lineWidth;
  const letters = branches.filter(isLetter).length;
  if (straight.length > 0 && letters === branches.length - 2 * straight.length)
    return { kind: "crossing", pairs: straight, corners: null };
  return { kind: "doubtful", pairs: straight, isLikelier: "joined", corners: null };
}

/** Whether all lines come to the blob of a place: letters make one place of a dot and of a crossing beside it. */
function isAllAtBlob(
  page: PreparedPage,
  { nodes, stretches }: Skeleton,
  { blob, blobAt, branches }: Zone,
): boolean {
  const far = Math.max(blob, 0) + BESIDE_BLOB * page.lineWidth;
  return branches.every(({ stretch, isFrom }) => {
    const { from, to } = stretches[stretch] as Stretch;
    const { x, y } = nodes[isFrom ? from : to] as SkeletonNode;
    return distance([x, y], blobAt) <= far;
  });
}

const isShort = ({ lineWidth }: PreparedPage, { stretches }: Skeleton, { stretch }: Branch) =>
  (stretches[stretch] as Stretch).length < LETTER_STROKE * lineWidth;

/**
 * The stem of a fork that goes straight on in a bump on the other side: it may be a crossing whose arm
 * broke off, by its number; null where none does.
 */
function facedByBump(
  page: PreparedPage,
  { nodes, stretches }: Skeleton,
  { at: [x, y], radius, inside, lineWidth }: Zone,
  ways: readonly (readonly Point[])[],
): number | null {
  for (const bump of inside) {
    const { from, to } = stretches[bump] as Stretch;
    for (const end of [from, to].map((node) => nodes[node] as SkeletonNode)) {
      const [dx, dy] = [end.x - x, end.y - y];
      const far = Math.hypot(dx, dy);
      if (end.stretches.length > 1 || far < BUMP * lineWidth) continue;
      if (darkness(page, x + OUT * dx, y + OUT * dy) < DARK) continue;
      const stem = ways.findIndex((way) => {
        const along = headingOf(way, [x, y], radius, radius + HEADING * lineWidth)?.along;
        return along && bendBetween([dx / far, dy / far], along) <= STRAIGHT_ON;
      });
      if (stem >= 0) return stem;
    }
  }
  return null;
}

/** Branches but for those that soon end: strokes of letters that touch the place, or grain. */
function withoutStrokes(
  page: PreparedPage,
  skeleton: Skeleton,
  { branches, held }: Zone,
): readonly Branch[] {
  return branches.filter((branch) => {
    const end = endOf(skeleton, branch);
    const goesOn = end.stretches.length > 1 || held.has(branch.stretch);
    return goesOn || !isShort(page, skeleton, branch);
  });
}

/** Where a branch's stretch ends. */
function endOf({ nodes, stretches }: Skeleton, { stretch, isFrom }: Branch): SkeletonNode {
  const { from, to } = stretches[stretch] as Stretch;
  return nodes[isFrom ? to : from] as SkeletonNode;
}

/** What the ink of a place looks like, if all its lines go straight on there. */
function looksAt(page: PreparedPage, zone: Zone, corners: number | null) {
  if (corners !== null) return corners >= DOT ? "dot" : corners <= PLAIN ? "plain" : "doubtful";
  const { blob, lineWidth } = zone;
  if (blob >= SOLID_BLOB * lineWidth && isSolid(page, zone)) return "dot";
  return blob < PLAIN_DISC * lineWidth ? "plain" : "doubtful";
}

interface Way {
  readonly branch: Branch;
  readonly along: Point;
}

type Pair = readonly [Way, Way];

const bendOf = ([a, b]: Pair) => bendBetween(a.along, b.along);

/**
 * One line straight on, the other leaving it at the same slant on both its sides: a half circle.
 * `starts` are the same pairs as they run close to the place.
 */
function isJump(
  pairs: readonly Pair[],
  starts: readonly Pair[],
  isOverHole: (branch: Branch) => boolean,
): boolean {
  if (pairs.length !== 2) return false;
  const bends = pairs.map((pair, n) => Math.min(bendOf(pair), bendOf(starts[n] ?? pair)));
  const straight = (bends[0] as number) <= (bends[1] as number) ? 0 : 1;
  const bent = pairs[1 - straight] as Pair;
  if ((bends[straight] as number) > STRAIGHT_ON || bendOf(bent) > JUMPS) return false;
  const slantsOf = (arms: Pair, [{ along }]: Pair) =>
    arms.map((arm) => bendBetween(arm.along, along)) as [number, number];
  const lines = [pairs, starts].map((of) => of[straight] as Pair);
  if (lines.some((line) => isAlike(slantsOf(bent, line)))) return true;
  // Of an arc with a hole in it only what is left beside the place leans as the other half does.
  if (!bent.some(({ branch }) => isOverHole(branch))) return false;
  const left = slantsOf(starts[1 - straight] as Pair, lines[1] as Pair);
  return isAlike(left) && left.every((slant) => Math.abs(slant - 90) >= LEANS);
}

const isAlike = ([a, b]: readonly [number, number]) => Math.abs(a - b) <= STRAIGHT_ON;

/**
 * Each branch with the one that faces it, as their first pieces stand round the place: farther off two of
 * them may have turned to the same side. Null if one has none.
 */
function pairsOf(
  [x, y]: Point,
  branches: readonly Branch[],
  headings: readonly (Heading | null)[],
  first: readonly (Heading | null)[],
): readonly Pair[] | null {
  if (branches.length % 2 === 1 || headings.includes(null)) return null;
  const round = branches
    .map((branch, n) => {
      const heading = headings[n] as Heading;
      const { at } = first[n] ?? heading;
      return { branch, along: heading.along, angle: Math.atan2(at[1] - y, at[0] - x) };
    })
    .sort((a, b) => a.angle - b.angle);
  const half = round.length / 2;
  return round.slice(0, half).map((way, n): Pair => [way, round[n + half] as Way]);
}
