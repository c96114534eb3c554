import type { Point } from "../../base/index.ts";
import { type Branch, bendBetween, type Heading, headingOf } from "./branch.ts";
import { dotSigns } from "./dot-signs.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, Stretch } from "./skeleton.ts";
import { faintOne } from "./smear.ts";
import { straightPairs } from "./straight-pairs.ts";
import type { Ways } from "./ways.ts";
import type { Zone } from "./zones.ts";

/** What lines do where they meet. */
export type Joint =
  /** All are one. */
  | { readonly kind: "joined" }
  /** They go straight through one another, each pair a line of its own. */
  | { readonly kind: "crossing"; readonly pairs: readonly (readonly [Branch, Branch])[] }
  /** It may be either; `isLikelier` says which one it looks like. */
  | {
      readonly kind: "doubtful";
      readonly pairs: readonly (readonly [Branch, Branch])[];
      readonly isLikelier: "joined" | "crossing";
    };

/**
 * Half the largest disc of solid ink at a place, in widths of its lines, tells a dot from a crossing:
 * where two plain lines cross squarely it reaches their four inner corners, 0.71; ink that ran makes
 * it 0.9. A dot two and a half lines wide, which is small, has 1.25. Blur rounds dots off and fills
 * corners up: ink beyond what the lines bring, in squares of a line's width, speaks too. A crossing
 * has none, that small dot 0.9; what is far more is a word, and says no more than a dot would.
 * Below `CROSSING` nothing is joined, from `JOINED` on all is, between them it is asked; both are set
 * where drawn pages of known nets, harmed at random, part.
 */
const CROSSING = 1;
const JOINED = 1.21;
const EXTRA_WEIGHT = 0.1;
const [LEAST_EXTRA, MOST_EXTRA] = [-0.5, 1];
/** Of the disc alone: so much solid ink is a dot, whatever lies round it. */
const SOLID_DOT = 1.17;
/** At a line that jumps another: a plain one, and what would be a dot all the same. */
const SOLID_JUMP = 1.25;
const SOLID_ON_JUMP = 1.6;

/**
 * In line widths: how far along each line is looked, how much round a place is its own, and on how
 * much of a line its heading is taken, and that with which it begins.
 */
const SEEN = 12;
const FREE = 0.6;
const HEADING = 3;
const FIRST = 1.5;
/** In line widths: no stroke of a letter is longer. */
const STROKE = 8;

/** Degrees: more than that between a line's two halves is no line that goes straight on. */
const STRAIGHT_ON = 30;
/** A line that jumps another leaves the place it jumps at a slant, both halves to the same side. */
const JUMPS = 130;

/** Whether so much solid ink is at a place that it must be a dot. */
export const hasDot = (page: PreparedPage, zone: Zone): boolean =>
  zone.blob >= SOLID_DOT * page.lineWidth;

export function jointAt(page: PreparedPage, skeleton: Skeleton, zone: Zone, through: Ways): Joint {
  const { branches } = zone;
  if (branches.length < 3) return { kind: "joined" };
  const { lineWidth } = page;
  const ways = branches.map((branch) => through.along(branch, zone.radius + SEEN * lineWidth));
  if (branches.length === 3) {
    // Three lines are one, but for a smear of a word or a shadow: of that the picture tells too little.
    const smear = hasDot(page, zone) ? null : faintOne(page, zone, ways);
    if (smear === null) return { kind: "joined" };
    const [a, b] = branches.filter((_, n) => n !== smear) as [Branch, Branch];
    return { kind: "doubtful", pairs: [[a, b]], isLikelier: "crossing" };
  }
  const near = zone.radius + FREE * lineWidth;
  const headingsFor = (from: number, length: number) =>
    ways.map(
      (way) =>
        headingOf(way, zone.at, from, near + length * lineWidth) ??
        headingOf(way, zone.at, 0, near + length * lineWidth),
    );
  const { solid, extra } = dotSigns(page, zone, ways);
  const pairs = pairsOf(branches, headingsFor(near, HEADING));
  // A line may turn right behind the place: its first piece tells where it came from.
  const first = headingsFor(zone.radius, FIRST);
  const startOf = (way: Way): Way => ({
    ...way,
    along: first[branches.indexOf(way.branch)]?.along ?? way.along,
  });
  const starts = pairs?.map(([a, b]): Pair => [startOf(a), startOf(b)]) ?? [];
  const isThrough = pairs?.every((pair) => bendOf(pair) <= STRAIGHT_ON) ?? false;
  // The flat top of a jump's arc lies along the line it jumps: more ink than at a crossing.
  const jumps = pairs !== null && !isThrough && isJump(pairs, starts);
  const isCrossed = isThrough || jumps || starts.every((pair) => bendOf(pair) <= STRAIGHT_ON);
  const blob = jumps
    ? solid
    : solid + EXTRA_WEIGHT * Math.min(MOST_EXTRA, Math.max(LEAST_EXTRA, extra));
  const [apart, joined] = jumps ? [SOLID_JUMP, SOLID_ON_JUMP] : [CROSSING, JOINED];
  if (blob >= joined || (!jumps && solid >= SOLID_DOT)) return { kind: "joined" };
  if (pairs !== null && isCrossed) {
    const both = pairs.map(([a, b]) => [a.branch, b.branch] as const);
    if (blob < apart) return { kind: "crossing", pairs: both };
    const isLikelier = 2 * blob > apart + joined ? "joined" : "crossing";
    return { kind: "doubtful", pairs: both, isLikelier };
  }
  const straight = straightPairs(page, zone, branches, ways, SEEN);
  const isLetter = ({ stretch }: Branch) =>
    !straight.flat().some((branch) => branch.stretch === stretch) &&
    (skeleton.stretches[stretch] as Stretch).length < STROKE * lineWidth;
  const lines = branches.length - 2 * straight.length;
  if (straight.length > 0 && branches.filter(isLetter).length === lines)
    return { kind: "crossing", pairs: straight };
  return { kind: "doubtful", pairs: straight, isLikelier: "joined" };
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
function isJump(pairs: readonly Pair[], starts: readonly Pair[]): boolean {
  if (pairs.length !== 2) return false;
  const bends = pairs.map((pair, n) => Math.min(bendOf(pair), bendOf(starts[n] ?? pair)));
  const straight = (bends[0] as number) <= (bends[1] as number) ? 0 : 1;
  const bent = pairs[1 - straight] as Pair;
  if ((bends[straight] as number) > STRAIGHT_ON || bendOf(bent) > JUMPS) return false;
  return [pairs, starts].some((of) => {
    const [{ along: line }] = of[straight] as Pair;
    const [one, other] = bent.map(({ along }) => bendBetween(along, line)) as [number, number];
    return Math.abs(one - other) <= STRAIGHT_ON;
  });
}

/** Each branch with the one that faces it, as they stand round the place; null if one has none. */
function pairsOf(
  branches: readonly Branch[],
  headings: readonly (Heading | null)[],
): readonly Pair[] | null {
  if (branches.length % 2 === 1 || headings.includes(null)) return null;
  const round = branches
    .map((branch, n): Way => ({ branch, along: (headings[n] as Heading).along }))
    .sort((a, b) => Math.atan2(a.along[1], a.along[0]) - Math.atan2(b.along[1], b.along[0]));
  const half = round.length / 2;
  return round.slice(0, half).map((way, n): Pair => [way, round[n + half] as Way]);
}
