import type { Point } from "../../base/index.ts";
import { type Branch, bendBetween, type Heading, headingOf } from "./branch.ts";
import { darkness, inkAcross, inkInDisc } from "./darkness.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, Stretch } from "./skeleton.ts";
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

/** Half the disc in which a dot is looked for, in line widths: as large as dots are drawn. */
const DISC = 2.75;
const FREE = 0.6;
const LOOKED_ALONG = 4;
const HEADING = 3;
const FIRST = 1.5;

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
  if (branches.length === 3) return forkAt(page, zone, ways);
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
  const straight = straightPairs(page, zone, branches, ways);
  const isLetter = ({ stretch }: Branch) =>
    !straight.flat().some((branch) => branch.stretch === stretch) &&
    (skeleton.stretches[stretch] as Stretch).length < STROKE * lineWidth;
  const lines = branches.length - 2 * straight.length;
  if (straight.length > 0 && branches.filter(isLetter).length === lines)
    return { kind: "crossing", pairs: straight };
  return { kind: "doubtful", pairs: straight, isLikelier: "joined" };
}

/** A branch so much fainter than full ink, and than the others of its fork, is no line ... */
const FAINT = 0.55;
const FAINTER = 0.65;
/** ... as far as it is looked at, in line widths. */
const NEAR = 5;

/**
 * Three lines are one, unless one is but a smear of a word or a shadow between two that are not: of
 * that the picture tells too little.
 */
function forkAt(page: PreparedPage, zone: Zone, ways: readonly (readonly Point[])[]): Joint {
  const { branches, radius, at } = zone;
  const dark = ways.map((way) =>
    darknessAlong(page, at, way, radius, radius + NEAR * page.lineWidth),
  );
  const least = Math.min(...dark);
  const others = branches.filter((_, n) => dark[n] !== least);
  const isFaint =
    least < FAINT && least < FAINTER * Math.min(...dark.filter((one) => one !== least));
  if (!isFaint || others.length !== 2) return { kind: "joined" };
  const [a, b] = others as [Branch, Branch];
  return { kind: "doubtful", pairs: [[a, b]], isLikelier: "crossing" };
}

/** The middle one of the darknesses of a way's places between two distances from a place. */
function darknessAlong(
  page: PreparedPage,
  [x, y]: Point,
  way: readonly Point[],
  from: number,
  to: number,
): number {
  const found: number[] = [];
  for (const [px, py] of way) {
    const far = Math.hypot(px - x, py - y);
    if (far > to) break;
    if (far >= from) found.push(darkness(page, px, py));
  }
  return found.length === 0 ? 1 : (found.sort((a, b) => a - b)[found.length >> 1] as number);
}

/** In line widths: how far along each line is looked, and how long no stroke of a letter is. */
const SEEN = 12;
const STROKE = 8;
/** Degrees, and line widths aside, between two halves of a line that runs on through letters. */
const RUNS_ON = 10;
const ASIDE = 0.8;
/** As dark as that a line is all along where it runs on. */
const DARK = 0.6;

/** Branches that are plainly one line, whatever else meets them: straight on, and dark all the way. */
function straightPairs(
  page: PreparedPage,
  zone: Zone,
  branches: readonly Branch[],
  ways: readonly (readonly Point[])[],
): (readonly [Branch, Branch])[] {
  const { lineWidth } = page;
  const found: { readonly a: number; readonly b: number; readonly bend: number }[] = [];
  // A corner may be near: where the whole piece is not straight, its beginning may be.
  for (const length of [SEEN, SEEN / 2, SEEN / 4]) {
    const far = zone.radius + length * lineWidth;
    const headings = ways.map(
      (way) => headingOf(way, zone.at, zone.radius, far) ?? headingOf(way, zone.at, 0, far),
    );
    for (let a = 0; a < ways.length; a++) {
      for (let b = a + 1; b < ways.length; b++) {
        const [one, other] = [headings[a], headings[b]];
        if (!one || !other) continue;
        const bend = bendBetween(one.along, other.along);
        if (bend > RUNS_ON || asideOf(one, other) > ASIDE * lineWidth) continue;
        if (isDarkBetween(page, one.at, other.at)) found.push({ a, b, bend });
      }
    }
  }
  const used = new Set<number>();
  return found
    .sort((one, other) => one.bend - other.bend)
    .flatMap(({ a, b }) => {
      if (used.has(a) || used.has(b)) return [];
      used.add(a).add(b);
      return [[branches[a] as Branch, branches[b] as Branch] as const];
    });
}

/** Pixels between the middle of one heading and the line of the other. */
function asideOf({ at: [x, y], along }: Heading, { at: [u, v] }: Heading): number {
  return Math.abs((u - x) * along[1] - (v - y) * along[0]);
}

function isDarkBetween(page: PreparedPage, [x, y]: Point, [u, v]: Point): boolean {
  const steps = Math.max(1, Math.ceil(Math.hypot(u - x, v - y)));
  for (let n = 0; n <= steps; n++) {
    const [px, py] = [x + ((u - x) * n) / steps, y + ((v - y) * n) / steps];
    if (darkness(page, px, py) < DARK) return false;
  }
  return true;
}

/** What speaks for a dot at a place: see `CROSSING` for the measures. */
export interface DotSigns {
  readonly solid: number;
  readonly extra: number;
}

export function dotSigns(
  page: PreparedPage,
  zone: Zone,
  ways: readonly (readonly Point[])[],
): DotSigns {
  const { extra, width } = inkBeyondLines(page, zone, ways);
  return { solid: zone.blob / width, extra };
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
