import { distance, type Point } from "../../base/index.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";
import { bendBetween, headingOf, lengthOf, placesAlong } from "./branch.ts";
import { darkness } from "./darkness.ts";
import { LETTER_STROKE } from "./letter-stroke.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, Stretch } from "./skeleton.ts";
import type { Zone } from "./zones.ts";

/** In line widths: so much of a line's heading is looked at, and so much at either end of a stroke is not. */
const HEADING = 4;
const AT_ENDS = 0.5;
/** Degrees: halves of one line, and a stem against it. */
const STRAIGHT_ON = 30;
const UPRIGHT = 25;
/** The ends of a straight line are apart by that share of its length at least. */
const STRAIGHT = 0.92;
/** Three quarters of a line's places are as dark as that share of the lines beside it. */
const DARK = 0.6;
/** Half a line's width, as a share of the usual line's. */
const WIDE = 0.9;

/**
 * Which branch of a fork of three may be a letter that stands between two lines and touches both: a short
 * one from fork to fork that is not as straight, dark and narrow as a line is. On rough paper none is sure
 * to be a line. Null where none is. `zones` are all places where lines meet, by their nodes.
 */
export function strokeBetween(
  page: PreparedPage,
  skeleton: Skeleton,
  { at, radius, branches, isOnRoughPaper }: Zone,
  zones: ReadonlyMap<number, Zone>,
  ways: readonly (readonly Point[])[],
): number | null {
  const { lineWidth } = page;
  const headings = ways.map(
    (way) => headingOf(way, at, radius, radius + HEADING * lineWidth)?.along ?? null,
  );
  for (const [n, { stretch, isFrom }] of branches.entries()) {
    const { from, to } = skeleton.stretches[stretch] as Stretch;
    const other = zones.get(isFrom ? to : from);
    // Half of an arc ends where it jumps another line.
    if (!other || (other.branches.length > 3 && !isOnRoughPaper)) continue;
    const way = ways[n] as readonly Point[];
    if (from === to) continue;
    const isLong = lengthOf(way) > LETTER_STROKE * lineWidth;
    const [a, b] = headings.filter((_, other) => other !== n);
    if (isOnRoughPaper && !isLong) return n;
    if (!a || !b || bendBetween(a, b) > STRAIGHT_ON) continue;
    const stem = headings[n];
    const isUpright = stem && Math.abs(bendBetween(stem, a) - 90) <= UPRIGHT;
    const beside = ways
      .filter((_, other) => other !== n)
      .map((way) => darkOf(page, way, at, radius));
    const dark = Math.min(...beside);
    // Grain forks a line, which goes on behind it; what a word's ink makes goes on in the line it touches.
    if (isLong) {
      const own = placesAlong(skeleton, { stretch, isFrom });
      if (!isUpright && darkOf(page, own, at, radius) < DARK * dark) return n;
      continue;
    }
    if (!isUpright || !isLine(page, way, dark)) return n;
  }
  return null;
}

/** Whether a short way is as straight, dark and narrow as the lines beside it. */
function isLine(page: PreparedPage, way: readonly Point[], dark: number): boolean {
  const { far, flat, lineWidth, spread } = page;
  const [first, last] = [way[0], way.at(-1)];
  if (!first || !last || distance(first, last) < STRAIGHT * lengthOf(way)) return false;
  const skipped = Math.round(AT_ENDS * lineWidth);
  const middle = way.slice(skipped, -skipped);
  if (middle.length === 0) return false;
  const darks = middle.map(([x, y]) => darkness(page, x, y));
  const halves = middle.map(
    ([x, y]) => (far[y * flat.width + x] as number) / STEPS_PER_PIXEL - 0.5 - spread,
  );
  return quantile(darks, 0.25) >= DARK * dark && quantile(halves, 0.5) <= WIDE * lineWidth;
}

/** How dark a way is beside a place, in the middle of all. */
function darkOf(page: PreparedPage, way: readonly Point[], [x, y]: Point, radius: number): number {
  const near = radius + HEADING * page.lineWidth;
  const darks = way
    .filter(([px, py]) => {
      const far = Math.hypot(px - x, py - y);
      return far >= radius && far <= near;
    })
    .map(([px, py]) => darkness(page, px, py));
  return quantile(darks, 0.5);
}

const quantile = (all: readonly number[], share: number): number =>
  [...all].sort((a, b) => a - b)[Math.floor(all.length * share)] ?? 0;
