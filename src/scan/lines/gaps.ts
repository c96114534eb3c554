import { bendBetween } from "./branch.ts";
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

/** Each end with the one that it faces best, where that one thinks so too. */
export function gapsBetween({ lineWidth }: PreparedPage, ends: readonly OpenEnd[]): Gap[] {
  const best = ends.map((end) => {
    let found: { other: number; wide: number; cost: number } | null = null;
    for (let other = 0; other < ends.length; other++) {
      const facing = ends[other] as OpenEnd;
      if (facing === end) continue;
      const wide = gapWidth(end, facing, lineWidth);
      if (wide === null) continue;
      // Of a crossing that lost its middle, what lies straight on is the same line, and not what is nearest.
      const isBent = bendBetween(end.onward, facing.onward) > CORNER;
      const cost = wide + (isBent ? MOST * lineWidth : 0);
      if (found === null || cost < found.cost) found = { other, wide, cost };
    }
    return found;
  });
  const gaps = squareCorners(
    lineWidth,
    ends.filter((_, n) => best[n] === null),
  );
  best.forEach((choice, n) => {
    if (choice === null || choice.other < n || best[choice.other]?.other !== n) return;
    const pair = [ends[n] as OpenEnd, ends[choice.other] as OpenEnd] as const;
    const isLong = (end: OpenEnd) => end.isHeld && end.length >= LONG_ENOUGH * lineWidth;
    if (!pair.some(isLong)) return;
    const isSure =
      choice.wide <= SURE * lineWidth && (pair.every(isLong) || pair.every(({ isHeld }) => isHeld));
    if (!isSure && !pair.every(({ isHeld }) => isHeld)) return;
    gaps.push({ ends: pair, wide: choice.wide, isSure });
  });
  return gaps;
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
    return from.length >= LONG_ENOUGH * lineWidth && on > 0 && off <= 0.8 * lineWidth;
  });
}

/** Holes at square corners, between ends that face no other. */
function squareCorners(lineWidth: number, ends: readonly OpenEnd[]): Gap[] {
  const gaps: Gap[] = [];
  const used = new Set<OpenEnd>();
  const long = ends.filter(({ isHeld, length }) => isHeld && length >= LONG_ENOUGH * lineWidth);
  long.forEach((a, n) => {
    for (const b of long.slice(n + 1)) {
      if (used.has(a) || used.has(b) || !isSquareCorner(a, b, lineWidth)) continue;
      used.add(a).add(b);
      const wide = Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1]);
      gaps.push({ ends: [a, b], wide, isSure: true });
    }
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
