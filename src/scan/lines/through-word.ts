import { type Box, distance, nearestOnSegment, type Point } from "../../base/index.ts";
import type { Bits } from "../raster.ts";
import { bendBetween } from "./branch.ts";
import { type PixelRows, pixelRows } from "./pixel-rows.ts";
import type { PreparedPage } from "./prepared-page.ts";

/** In line widths: how far a line through a word may stray from straight. */
const STRAY = 1;
/** ... and how deep in a word a corner of a line, or a T, may lie: letters have those too. */
const DEEP = 3;
/** How much of a line is looked at outside the word, in line widths. */
const OUTSIDE = 5;
/** Degrees between what is outside and what is inside. */
const STRAIGHT_ON = 25;

/** A line that enters a word: its first place inside, and the way in which it runs there. */
interface Entry {
  readonly at: number;
  readonly inward: Point;
}

/**
 * Places of lines that run through a word without a break: from one side straight to another, round a
 * corner near its edge, or up to such a line. Letters that touch it are not among them.
 */
export function linesThrough(page: PreparedPage, lines: Bits, word: Box): number[] {
  const { width, data } = lines;
  const box = pixelRows(word, 0, lines);
  const isIn = (at: number) => {
    const [x, y] = [at % width, Math.floor(at / width)];
    return x >= box.left && x < box.right && y >= box.top && y < box.bottom;
  };
  const point = (at: number): Point => [at % width, Math.floor(at / width)];
  const entries = entriesOf(lines, box, OUTSIDE * page.lineWidth, isIn);
  const kept = new Set<number>();
  const stray = STRAY * page.lineWidth;
  const paths = entries.map((entry) => pathsFrom(lines, entry.at, isIn));
  const isOnward = ({ at, inward }: Entry, to: number) => {
    const [[x, y], [toX, toY]] = [point(at), point(to)];
    const far = Math.hypot(toX - x, toY - y);
    if (far <= 2 * page.lineWidth) return true;
    const way: Point = [(toX - x) / far, (toY - y) / far];
    return bendBetween(inward, [-way[0], -way[1]]) <= STRAIGHT_ON;
  };
  entries.forEach((a, n) => {
    entries.slice(n + 1).forEach((b) => {
      const path = pathTo(paths[n] as ReadonlyMap<number, number>, b.at);
      if (!path) return;
      const isStraight = isOnward(a, b.at) && isOnward(b, a.at);
      if (isStraight && strays(path, width, a.at, b.at) <= stray)
        for (const at of path) kept.add(at);
      else if (isCorner(a, b, path)) for (const at of path) kept.add(at);
    });
  });
  if (kept.size === 0) return [];
  entries.forEach((entry, n) => {
    if (kept.has(entry.at)) return;
    let [reached, far] = [-1, DEEP * page.lineWidth];
    for (const at of (paths[n] as ReadonlyMap<number, number>).keys()) {
      if (!kept.has(at)) continue;
      const [[x, y], [fromX, fromY]] = [point(at), point(entry.at)];
      const wide = Math.hypot(x - fromX, y - fromY);
      if (wide < far) [reached, far] = [at, wide];
    }
    if (reached < 0 || !isOnward(entry, reached)) return;
    const path = pathTo(paths[n] as ReadonlyMap<number, number>, reached);
    for (const at of path ?? []) kept.add(at);
  });
  return [...kept].filter((at) => data[at]);

  /** Both go straight to where they meet, which lies near the word's edge. */
  function isCorner(a: Entry, b: Entry, path: readonly number[]): boolean {
    const meet = meeting(point(a.at), a.inward, point(b.at), b.inward);
    if (!meet || bendBetween(a.inward, b.inward) < STRAIGHT_ON) return false;
    const [x, y] = meet;
    const deep = Math.min(x - box.left, box.right - 1 - x, y - box.top, box.bottom - 1 - y);
    if (deep > DEEP * page.lineWidth || deep < -stray) return false;
    return path.every((at) => {
      const from = point(at);
      return (
        Math.min(
          farFromSegment(from, point(a.at), meet),
          farFromSegment(from, point(b.at), meet),
        ) <= stray
      );
    });
  }
}

/** Where lines come in, each pixel group on the box's edge once, and which way they run. */
function entriesOf(
  { width, height, data }: Bits,
  { left, top, right, bottom }: PixelRows,
  reach: number,
  isIn: (at: number) => boolean,
): Entry[] {
  const found: Entry[] = [];
  const seen = new Set<number>();
  const look = (x: number, y: number) => {
    const at = y * width + x;
    if (!data[at] || seen.has(at)) return;
    seen.add(at);
    for (const outside of besides(at, width, height)) {
      if (!data[outside] || isIn(outside)) continue;
      const away = walkAway(outside, at, { width, height, data }, reach, isIn);
      const [dx, dy] = [(at % width) - away[0], Math.floor(at / width) - away[1]];
      const far = Math.hypot(dx, dy);
      if (found.some((entry) => besides(entry.at, width, height).includes(at))) return;
      found.push({ at, inward: [dx / far, dy / far] });
      return;
    }
  };
  for (let x = left; x < right; x++) {
    look(x, top);
    look(x, bottom - 1);
  }
  for (let y = top; y < bottom; y++) {
    look(left, y);
    look(right - 1, y);
  }
  return found;
}

/** Along a line outside the word, to where it forks, ends, or is far enough. */
function walkAway(
  start: number,
  from: number,
  { width, height, data }: Bits,
  reach: number,
  isIn: (at: number) => boolean,
): Point {
  let at = start;
  const seen = new Set([from, start]);
  for (let n = 0; n < reach; n++) {
    const next = besides(at, width, height).filter(
      (beside) => data[beside] && !seen.has(beside) && !isIn(beside),
    );
    const [first] = next;
    if (first === undefined || next.length > 2) break;
    for (const one of next) seen.add(one);
    at = first;
  }
  return [at % width, Math.floor(at / width)];
}

/** All places inside that hang on one, each with the place before it on the shortest way. */
function pathsFrom(
  { width, height, data }: Bits,
  start: number,
  isIn: (at: number) => boolean,
): ReadonlyMap<number, number> {
  const before = new Map([[start, -1]]);
  const order = [start];
  for (let n = 0; n < order.length; n++) {
    const at = order[n] as number;
    for (const beside of besides(at, width, height)) {
      if (!data[beside] || before.has(beside) || !isIn(beside)) continue;
      before.set(beside, at);
      order.push(beside);
    }
  }
  return before;
}

function pathTo(before: ReadonlyMap<number, number>, end: number): number[] | null {
  if (!before.has(end)) return null;
  const path: number[] = [];
  for (let at = end; at !== -1; at = before.get(at) as number) path.push(at);
  return path;
}

/** How far, in pixels, places lie from the straight line between two of them. */
function strays(path: readonly number[], width: number, a: number, b: number): number {
  const point = (at: number): Point => [at % width, Math.floor(at / width)];
  return path.reduce(
    (most, at) => Math.max(most, farFromSegment(point(at), point(a), point(b))),
    0,
  );
}

const farFromSegment = (p: Point, a: Point, b: Point) => distance(p, nearestOnSegment(p, a, b));

/** Where two lines cross; null where they run the same way. */
function meeting([ax, ay]: Point, [dx, dy]: Point, [bx, by]: Point, [ex, ey]: Point): Point | null {
  const cross = dx * ey - dy * ex;
  if (Math.abs(cross) < 0.1) return null;
  const along = ((bx - ax) * ey - (by - ay) * ex) / cross;
  return [ax + along * dx, ay + along * dy];
}

function besides(at: number, width: number, height: number): number[] {
  const [x, y] = [at % width, Math.floor(at / width)];
  const found: number[] = [];
  // Sides before corners: a shortest way then keeps to the line.
  for (const [dx, dy] of AROUND) {
    const [nextX, nextY] = [x + dx, y + dy];
    if (nextX >= 0 && nextY >= 0 && nextX < width && nextY < height)
      found.push(at + dy * width + dx);
  }
  return found;
}

const AROUND = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const;
