import type { Point } from "../../base/index.ts";
import { type Branch, bendBetween, type Heading, headingOf, placesAlong } from "./branch.ts";
import { inkAcross, inkInDisc } from "./darkness.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton } from "./skeleton.ts";
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
 * Half the largest disc of solid ink at a place, in widths of its lines. Where two plain lines cross
 * squarely it reaches their four inner corners, 0.71; ink that ran makes it 0.9. A dot two and a half
 * lines wide, which is small, has 1.25.
 */
const SOLID_CROSSING = 0.95;
const SOLID_DOT = 1.17;
/** At a line that jumps another: a plain one, and what would be a dot all the same. */
const SOLID_JUMP = 1.25;
const SOLID_ON_JUMP = 1.6;
/**
 * Between the two, ink beyond what the lines bring tells, in squares of a line's width: a crossing has
 * none, that small dot 0.9, one three lines wide 2.
 */
const DOT = 1.2;
const PLAIN = 0.5;

/** Half the disc in which a dot is looked for, in line widths: as large as dots are drawn. */
const DISC = 2.75;
const FREE = 0.6;
const LOOKED_ALONG = 4;
const HEADING = 3;

/** Degrees: more than that between a line's two halves is no line that goes straight on. */
const STRAIGHT_ON = 30;
/** A line that jumps another leaves the place it jumps at a slant, both halves to the same side. */
const JUMPS = 130;

/** Whether so much solid ink is at a place that it must be a dot. */
export const hasDot = (page: PreparedPage, zone: Zone): boolean =>
  zone.blob >= SOLID_DOT * page.lineWidth;

export function jointAt(page: PreparedPage, skeleton: Skeleton, zone: Zone): Joint {
  const { branches } = zone;
  if (branches.length < 4) return { kind: "joined" };
  const { lineWidth } = page;
  const ways = branches.map((branch) => placesAlong(skeleton, branch));
  const near = zone.radius + FREE * lineWidth;
  const headings = ways.map(
    (way) =>
      headingOf(way, zone.at, near, near + HEADING * lineWidth) ??
      headingOf(way, zone.at, 0, near + HEADING * lineWidth),
  );
  const { extra, width } = inkBeyondLines(page, zone, ways);
  const solid = zone.blob / width;
  const pairs = pairsOf(branches, headings);
  const isThrough = pairs?.every((pair) => bendOf(pair) <= STRAIGHT_ON) ?? false;
  // The flat top of a jump's arc lies along the line it jumps: more ink than at a crossing.
  const jumps = pairs !== null && !isThrough && isJump(pairs);
  if (solid >= (jumps ? SOLID_ON_JUMP : SOLID_DOT)) return { kind: "joined" };
  if (!jumps && solid > SOLID_CROSSING && extra >= DOT) return { kind: "joined" };
  const isPlain = solid <= (jumps ? SOLID_JUMP : SOLID_CROSSING) || extra <= PLAIN;
  if (pairs === null) return { kind: "doubtful", pairs: [], isLikelier: "joined" };
  if (isPlain && (isThrough || jumps))
    return { kind: "crossing", pairs: pairs.map(([a, b]) => [a.branch, b.branch] as const) };
  return {
    kind: "doubtful",
    pairs: pairs.map(([a, b]) => [a.branch, b.branch] as const),
    isLikelier: extra > DOT / 2 ? "joined" : "crossing",
  };
}

/** Ink in a disc beyond that of the lines which enter it, in squares of their width, which is told too. */
function inkBeyondLines(
  page: PreparedPage,
  zone: Zone,
  ways: readonly (readonly Point[])[],
): { extra: number; width: number } {
  const { lineWidth } = page;
  const { at } = zone;
  const radius = DISC * lineWidth;
  const from = radius + FREE * lineWidth;
  const measured = ways.map((way) =>
    widthAlong(page, at, way, from, from + LOOKED_ALONG * lineWidth),
  );
  const known = measured.filter((width) => width !== null);
  const mean = known.reduce((sum, width) => sum + width, 0) / known.length || lineWidth;
  // A line that bends, as one that jumps another, brings more ink into the disc than a straight one.
  const lines = ways.map((way, n) => (measured[n] ?? mean) * lengthWithin(at, way, radius));
  // What several lines share in the middle, they bring but once.
  const shared = (ways.length / 2 - 1) * mean * mean;
  const expected = lines.reduce((sum, ink) => sum + ink, 0) - shared;
  const extra = (inkInDisc(page, at, radius) - expected) / (mean * mean);
  return { extra, width: mean };
}

/** Pixels of a way within a distance of a place, the way to its first pixel included. */
function lengthWithin([x, y]: Point, way: readonly Point[], radius: number): number {
  let [lastX, lastY, length] = [x, y, 0];
  // Straight steps of a few pixels: a thinned line's stairs are longer than the line.
  for (let n = 3; n < way.length; n += 3) {
    const [nextX, nextY] = way[n] as Point;
    const far = Math.hypot(nextX - x, nextY - y);
    if (far > radius) return length + Math.max(0, radius - Math.hypot(lastX - x, lastY - y));
    length += Math.hypot(nextX - lastX, nextY - lastY);
    [lastX, lastY] = [nextX, nextY];
  }
  return length;
}

/** How wide a line is, measured in its ink between two distances from a place; null if not there. */
function widthAlong(
  page: PreparedPage,
  [x, y]: Point,
  way: readonly Point[],
  from: number,
  to: number,
): number | null {
  const reach = Math.max(2, Math.round(page.lineWidth));
  const widths: number[] = [];
  for (let n = 0; n < way.length; n++) {
    const at = way[n] as Point;
    const far = Math.hypot(at[0] - x, at[1] - y);
    if (far > to) break;
    if (far < from) continue;
    const [before, after] = [way[Math.max(0, n - reach)], way[Math.min(way.length - 1, n + reach)]];
    if (!before || !after) continue;
    const length = Math.hypot(after[0] - before[0], after[1] - before[1]);
    if (length === 0) continue;
    const along: Point = [(after[0] - before[0]) / length, (after[1] - before[1]) / length];
    widths.push(inkAcross(page, at, along, 2 * page.lineWidth));
  }
  if (widths.length === 0) return null;
  // The middle one: a word beside the line is ink of its own.
  return widths.sort((a, b) => a - b)[Math.floor(widths.length / 2)] as number;
}

interface Way {
  readonly branch: Branch;
  readonly along: Point;
}

type Pair = readonly [Way, Way];

const bendOf = ([a, b]: Pair) => bendBetween(a.along, b.along);

/** One line straight on, the other leaving it at the same slant on both its sides: a half circle. */
function isJump(pairs: readonly Pair[]): boolean {
  const [first, second] = pairs;
  if (!first || !second || pairs.length !== 2) return false;
  const [straight, bent] = bendOf(first) <= bendOf(second) ? [first, second] : [second, first];
  if (bendOf(straight) > STRAIGHT_ON || bendOf(bent) > JUMPS) return false;
  const slants = bent.map(({ along }) => bendBetween(along, straight[0].along));
  return Math.abs((slants[0] as number) - (slants[1] as number)) <= STRAIGHT_ON;
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
