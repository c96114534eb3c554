import { addTo, type Point } from "../../base/index.ts";
import type { Sliced } from "../sliced.ts";
import { bendBetween } from "./branch.ts";
import { NearEnds } from "./near-ends.ts";
import type { OpenEnd } from "./open-ends.ts";
import type { PreparedPage } from "./prepared-page.ts";

/** Two open ends that face one another: one line that a bad print broke, or two that stop. */
export interface Gap {
  readonly ends: readonly [OpenEnd, OpenEnd];
  /** Pixels from end to end. */
  readonly wide: number;
  readonly isSure: boolean;
}

/** In line widths: a hole so small is a flaw of the print ... */
const SURE = 4;
/** ... and one beyond this is no hole in a line at all. */
const MOST = 9;
/** Degrees between the two lines, and of each against the line from end to end. */
const BEND = 18;
/** A hole of fewer line widths may be in a bend of so many degrees. */
const TINY = 3;
const CORNER = 65;
/** ... or right before a square corner, or right behind it. */
const SQUARE = 110;
/** In line widths: two ends may lie so far before and behind the square corner that they made. */
const TO_CORNER = 2.2;
const PAST_CORNER = 1.2;
/** A line must be at least that long, in line widths, to have a direction worth following. */
const LONG_ENOUGH = 3;
/** ... and a piece of one that a part holds, of which the part's edge hides the rest. */
const HELD_ENOUGH = 2;

/** Ends looked at in a slice: each has a few dozen others near, on a page full of words. */
const ENDS = 500;

/** Each end with the one that it faces best, where that one thinks so too. */
export function* gapsBetween({ lineWidth }: PreparedPage, ends: readonly OpenEnd[]): Sliced<Gap[]> {
  const reach = MOST * lineWidth;
  const near = new NearEnds(ends, reach);
  const numberOf = new Map(ends.map((end, n) => [end, n]));
  const best: (Choice | null)[] = [];
  for (const end of ends) {
    if (best.length % ENDS === ENDS - 1) yield best.length / ends.length;
    let found: Choice | null = null;
    for (const facing of near.around(end.at, reach)) {
      if (facing === end) continue;
      const wide = gapWidth(end, facing, lineWidth);
      if (wide === null) continue;
      const cost = wide + lineWidth * drawback(end, facing);
      const other = numberOf.get(facing) as number;
      const isBetter =
        found === null || cost < found.cost || (cost === found.cost && other < found.other);
      if (isBetter) found = { other, wide, cost };
    }
    best.push(found);
  }
  const gaps = squareCorners(
    lineWidth,
    ends.filter((_, n) => best[n] === null),
  );
  const unheld = new Map<number, Gap[]>();
  best.forEach((choice, n) => {
    if (choice === null || choice.other < n || best[choice.other]?.other !== n) return;
    const pair = [ends[n] as OpenEnd, ends[choice.other] as OpenEnd] as const;
    const isLong = (end: OpenEnd) => end.isHeld && end.length >= LONG_ENOUGH * lineWidth;
    if (!pair.some(isLong)) return;
    const isSure =
      choice.wide <= SURE * lineWidth && (pair.every(isLong) || pair.every(({ isHeld }) => isHeld));
    const gap = { ends: pair, wide: choice.wide, isSure };
    const short = pair.find(({ isHeld }) => !isHeld);
    if (isSure || !short) gaps.push(gap);
    else addTo(unheld, short.stretch, gap);
  });
  // What lies between two holes and goes on in lines at both its ends is a piece of line, short as it may be.
  for (const pair of unheld.values()) {
    if (pair.length < 2 || pair.some(({ wide }) => wide > SURE * lineWidth)) continue;
    for (const gap of pair) gaps.push({ ...gap, isSure: true });
  }
  return gaps;
}

/** In line widths: so much farther off one counts that is nearer than what lies straight on, and not the same line. */
function drawback(end: OpenEnd, facing: OpenEnd): number {
  const bend = bendBetween(wayOf(end), wayOf(facing));
  // A crossing that lost its middle.
  if (bend > CORNER) return MOST;
  // A letter's stroke beside a hole in a line.
  return bend > BEND && !facing.isHeld ? SURE : 0;
}

/** Where a line goes that ends: right behind a corner only its very end tells. */
const wayOf = ({ onward, tip }: OpenEnd): Point =>
  bendBetween(onward, [-tip[0], -tip[1]]) > CORNER ? tip : onward;

/** The end that another faces best: its number, how far off it is and what it counts for, in pixels. */
interface Choice {
  readonly other: number;
  readonly wide: number;
  readonly cost: number;
}

/** Pixels between two ends that go on into one another; null where they don't. */
function gapWidth(a: OpenEnd, b: OpenEnd, lineWidth: number): number | null {
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const wide = Math.hypot(dx, dy);
  if (wide > MOST * lineWidth) return null;
  const bend = bendBetween(a.onward, b.onward);
  const ahead = Math.min(dx * a.onward[0] + dy * a.onward[1], -dx * b.onward[0] - dy * b.onward[1]);
  // A hole in a round corner.
  if (wide <= TINY * lineWidth && bend <= CORNER && ahead > -lineWidth / 2) return wide;
  // What a hole left of a line right behind an arc has its way in its very end.
  const onTips = Math.min(dx * a.tip[0] + dy * a.tip[1], -dx * b.tip[0] - dy * b.tip[1]);
  if (wide <= TINY * lineWidth && bendBetween(a.tip, b.tip) <= CORNER && onTips > lineWidth / 2)
    return wide;
  if (wide <= TINY * lineWidth && bend <= SQUARE && isRightAhead(a, b, lineWidth)) return wide;
  const aside = Math.abs(dx * a.onward[1] - dy * a.onward[0]);
  // A short rest of a line has no direction of its own.
  const [long, short] = a.length > b.length ? [a, b] : [b, a];
  if (short.length < LONG_ENOUGH * lineWidth && long.length >= LONG_ENOUGH * lineWidth) {
    const [ex, ey] = [short.at[0] - long.at[0], short.at[1] - long.at[1]];
    const off = Math.abs(ex * long.onward[1] - ey * long.onward[0]);
    const on = ex * long.onward[0] + ey * long.onward[1];
    return on > -lineWidth && off <= 0.8 * lineWidth && bend <= CORNER ? wide : null;
  }
  if (bend > BEND || ahead < -lineWidth || aside > lineWidth) return null;
  return wide;
}

/** Whether one end lies where the other goes, though it turns off there. */
function isRightAhead(a: OpenEnd, b: OpenEnd, lineWidth: number): boolean {
  return [[a, b] as const, [b, a] as const].some(([from, to]) => {
    const [dx, dy] = [to.at[0] - from.at[0], to.at[1] - from.at[1]];
    const on = dx * from.onward[0] + dy * from.onward[1];
    const off = Math.abs(dx * from.onward[1] - dy * from.onward[0]);
    const least = (from.isHeld ? HELD_ENOUGH : LONG_ENOUGH) * lineWidth;
    return from.length >= least && on > 0 && off <= 0.8 * lineWidth;
  });
}

/** Holes at square corners, between ends that face no other. */
function squareCorners(lineWidth: number, ends: readonly OpenEnd[]): Gap[] {
  const gaps: Gap[] = [];
  const used = new Set<OpenEnd>();
  const long = ends.filter(({ isHeld, length }) => isHeld && length >= LONG_ENOUGH * lineWidth);
  const numberOf = new Map(long.map((end, n) => [end, n]));
  const reach = MOST * lineWidth;
  const near = new NearEnds(long, reach);
  long.forEach((a, n) => {
    if (used.has(a)) return;
    let first: OpenEnd | null = null;
    let number = Number.POSITIVE_INFINITY;
    for (const b of near.around(a.at, reach)) {
      const other = numberOf.get(b) as number;
      if (other <= n || other >= number) continue;
      if (used.has(b) || !isSquareCorner(a, b, lineWidth)) continue;
      [first, number] = [b, other];
    }
    if (!first) return;
    used.add(a).add(first);
    const wide = Math.hypot(first.at[0] - a.at[0], first.at[1] - a.at[1]);
    gaps.push({ ends: [a, first], wide, isSure: true });
  });
  return gaps;
}

/** Whether both ends are right before the corner where the one would meet the other. */
function isSquareCorner(a: OpenEnd, b: OpenEnd, lineWidth: number): boolean {
  if (Math.abs(bendBetween(a.onward, b.onward) - 90) > BEND) return false;
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const toCorner = [dx * a.onward[0] + dy * a.onward[1], -dx * b.onward[0] - dy * b.onward[1]];
  return toCorner.every((far) => far <= TO_CORNER * lineWidth && far >= -PAST_CORNER * lineWidth);
}
