import type { Point } from "../../base/index.ts";
import { type Branch, bendBetween, headingOf } from "./branch.ts";
import { middleDarkness } from "./darkness.ts";
import { LETTER_STROKE } from "./letter-stroke.ts";
import type { OpenEnd } from "./open-ends.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Ways } from "./ways.ts";
import type { Zone } from "./zones.ts";

/** A crossing of which one arm broke off: three lines are left, and an end that faces them. */
export interface BrokenCrossing {
  readonly through: readonly [Branch, Branch];
  readonly stem: Branch;
  /** The other half of the stem's line. */
  readonly end: OpenEnd;
  readonly isSure: boolean;
}

/** In line widths: an end so near is the lost arm's, and none farther than the second is. */
const SURE = 4.5;
const MOST = 9;
/** Pixels round the place that are its own, and how much of a line is looked at, in line widths. */
const FREE = 0.6;
const LOOKED_ALONG = 4;
const FIRST = 1.5;
/** Half the solid ink at a place, in line widths: more than a fork without a dot has. */
const DOTTED = 0.95;
/** Degrees between two halves of one line. */
const STRAIGHT_ON = 30;
const ONWARD = 18;
/** Degrees by which the halves of a line that jumps may differ in their slant. */
const SLANT = 35;
/** Degrees between a stem that stands up from its line and one that is half of a jump. */
const LEANS = 20;
const UPRIGHT = 12;
/** What is less than so many times as dark as the stem may be letters' ink. */
const PALE = 0.65;
/** In line widths: an end that the stem may go on to lies so far beside its way ... */
const ASIDE = 1;
/** ... and points no more away from it than by this sine. */
const AWAY = 0.3;
/** In line widths: a shorter end may be a speck, and is never sure. */
const LONG_ENOUGH = 2.5;

interface Way {
  readonly branch: Branch;
  readonly along: Point;
  readonly first: Point;
  /** As `darkness` has it. */
  readonly dark: number;
}

/** A fork of three lines, one of them taken for the half of a line that crosses the other two. */
interface Fork {
  readonly zone: Zone;
  readonly stem: Way;
  readonly a: Way;
  readonly b: Way;
}

/** Looks for the lost arm of a crossing at a fork of three lines; null where there is none. */
export function brokenCrossing(
  page: PreparedPage,
  zone: Zone,
  ends: readonly OpenEnd[],
  through: Ways,
): BrokenCrossing | null {
  if (zone.branches.length !== 3) return null;
  const near = zone.radius + FREE * page.lineWidth;
  const ways: Way[] = [];
  for (const branch of zone.branches) {
    const reach = near + LOOKED_ALONG * page.lineWidth;
    const points = through.along(branch, reach, zone.at, reach);
    const along = headingOf(points, zone.at, near, reach)?.along;
    // A line may turn right behind the place: its first piece tells where it came from.
    const first = headingOf(points, zone.at, zone.radius, near + FIRST * page.lineWidth)?.along;
    const dark = middleDarkness(page, zone.at, points, zone.radius, reach);
    if (along) ways.push({ branch, along, first: first ?? along, dark });
  }
  if (ways.length < 3) return null;
  const isDotted = zone.blob >= DOTTED * zone.lineWidth;
  let best: (BrokenCrossing & { wide: number; goesOn: boolean }) | null = null;
  for (let n = 0; n < 3; n++) {
    const [stem, a, b] = [ways[n] as Way, ways[(n + 1) % 3] as Way, ways[(n + 2) % 3] as Way];
    const fork: Fork = { zone, stem, a, b };
    for (const end of ends) {
      if (zone.branches.some(({ stretch }) => stretch === end.stretch)) continue;
      const wide = Math.hypot(zone.at[0] - end.at[0], zone.at[1] - end.at[1]) - zone.radius;
      if (wide > MOST * page.lineWidth) continue;
      const isLong = end.length >= LONG_ENOUGH * page.lineWidth;
      const goesOn = isStraightOn(page, fork, end) || (isLong && isJumpOver(fork, end));
      const isNear = isLong && end.isHeld && wide <= SURE * page.lineWidth;
      // So near a corner of its own its way can't be told; but a dot needs no fourth line.
      const mayGoOn = isNear && !isDotted && isAhead(page, fork, end);
      if (!goesOn && !mayGoOn) continue;
      if (best && (best.goesOn === goesOn ? best.wide <= wide : best.goesOn)) continue;
      // It may be a letter's stroke: no line goes on in it where a dot is, be it a small one, ...
      const isStroke = !end.isHeld || end.length < LETTER_STROKE * page.lineWidth;
      if (isStroke && isDotted) continue;
      // ... and one of hardly any length is asked of only where it is plain what it would cross.
      if (!isLong && (!end.isHeld || bendBetween(a.along, b.along) > STRAIGHT_ON)) continue;
      best = {
        through: [a.branch, b.branch],
        stem: stem.branch,
        end,
        wide,
        goesOn,
        isSure: goesOn && isNear && end.dark >= PALE * stem.dark,
      };
    }
  }
  return best;
}

/** The stem's line goes straight on; what it crosses does so too, or jumps it. */
function isStraightOn({ lineWidth }: PreparedPage, fork: Fork, end: OpenEnd): boolean {
  const { zone, stem } = fork;
  const [dx, dy] = [zone.at[0] - end.at[0], zone.at[1] - end.at[1]];
  // A line that turned right before it broke off has its last way in its tip; so have letters.
  const comes = (end.isHeld ? [end.onward, end.tip] : [end.onward]).some((way) => {
    const bend = Math.min(bendBetween(stem.along, way), bendBetween(stem.first, way));
    return (
      bend >= 180 - ONWARD &&
      dx * way[0] + dy * way[1] > 0 &&
      Math.abs(dx * way[1] - dy * way[0]) <= 1.5 * lineWidth
    );
  });
  if (!comes) return false;
  return isCrossed(fork);
}

/** What the stem would cross goes straight on, or jumps it. */
const isCrossed = ({ stem, a, b }: Fork): boolean =>
  bendBetween(a.along, b.along) <= STRAIGHT_ON ||
  Math.abs(bendBetween(a.along, stem.first) - bendBetween(b.along, stem.first)) <= SLANT;

/** The end lies where the stem goes on to, wherever it comes from itself but from the stem's own side. */
function isAhead({ lineWidth }: PreparedPage, fork: Fork, end: OpenEnd): boolean {
  const { zone, stem } = fork;
  const [dx, dy] = [end.at[0] - zone.at[0], end.at[1] - zone.at[1]];
  const isInLine = [stem.along, stem.first].some(
    (way) =>
      dx * way[0] + dy * way[1] < 0 && Math.abs(dx * way[1] - dy * way[0]) <= ASIDE * lineWidth,
  );
  if (!isInLine || dx * end.onward[0] + dy * end.onward[1] > AWAY * Math.hypot(dx, dy))
    return false;
  return isCrossed(fork);
}

/** The stem is half of a line that jumps the other two, and the end lies where the other half does. */
function isJumpOver({ zone, stem, a, b }: Fork, end: OpenEnd): boolean {
  if (bendBetween(a.along, b.along) > STRAIGHT_ON) return false;
  // Right behind the top of a small arc it leans most.
  const [far, first] = [stem.along, stem.first].map((way) => bendBetween(way, a.along) - 90) as [
    number,
    number,
  ];
  const lean = Math.abs(first) > Math.abs(far) ? first : far;
  if (Math.abs(lean) < LEANS) return false;
  const [dx, dy] = [end.at[0] - zone.at[0], end.at[1] - zone.at[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0) return false;
  const toEnd: Point = [dx / length, dy / length];
  const side = (way: Point) => Math.sign(way[0] * a.along[1] - way[1] * a.along[0]);
  if (side(toEnd) === side(stem.along)) return false;
  // It comes towards the place, be it in an arc.
  const comes = [end.onward, end.tip].some(
    (way) => -(toEnd[0] * way[0] + toEnd[1] * way[1]) >= 0.3,
  );
  if (!comes) return false;
  // Near the top of the arc the other half leans less, and never the other way.
  const other = (bendBetween(toEnd, a.along) - 90) * Math.sign(lean);
  return other >= -UPRIGHT && other <= Math.abs(lean) + SLANT;
}
