import { distance, type Point } from "../../base/index.ts";
import { type FittedLine, offsetFrom, type Span, type Track } from "./fitted-line.ts";
import { pointOf } from "./pieces.ts";

/** Where a track crosses another line: before its pixel `index`. */
export interface TrackCrossing {
  readonly index: number;
  readonly at: Point;
}

/** In line widths: from the top of a jump to its foot, at least and at most. */
const NEAREST = 2;
const FARTHEST = 9;
/** In line widths: how high a jump is. */
const LOW = 0.9;
const HIGH = 6;
/** In line widths: what lies beyond both feet is on one line, for so far at least, and looked at so far. */
const ASIDE = 0.7;
const BESIDE = 1.5;
const LOOKED_AT = 3;

/** A track without the arcs in which it jumps other lines: it runs straight from foot to foot. */
export function withoutJumps(
  track: Track,
  crossings: readonly TrackCrossing[],
  lineWidth: number,
): Track {
  const arcs = crossings
    .map((crossing) => arcAt(track, crossing, lineWidth))
    .filter((arc) => arc !== null);
  if (arcs.length === 0) return track;
  const isInArc = new Uint8Array(track.xs.length);
  for (const [first, last] of arcs) isInArc.fill(1, first + 1, last);
  const isKept = (_: number, n: number) => isInArc[n] === 0;
  return { xs: track.xs.filter(isKept), ys: track.ys.filter(isKept) };
}

/** In line widths: feet so much lower are the arc's rather than those found before. */
const LOWER = 0.25;

/** The feet of a jump whose top is a crossing; null where the line does not jump there. */
function arcAt(track: Track, { index, at }: TrackCrossing, lineWidth: number): Span | null {
  const count = track.xs.length;
  let [feet, high]: [Span | null, number] = [null, 0];
  let [first, last] = [index - 1, index];
  for (let wide = NEAREST; wide <= FARTHEST; wide += 0.5) {
    while (first >= 0 && distance(pointOf(track, first), at) < wide * lineWidth) first--;
    while (last < count && distance(pointOf(track, last), at) < wide * lineWidth) last++;
    if (first < 0 || last >= count) break;
    const here = archHeight(track, first, last, at, lineWidth);
    if (here > high + LOWER * lineWidth) [feet, high] = [[first, last], here];
  }
  return feet;
}

/** How high above its feet, in pixels, the top of an arc is; 0 where what lies between them is none. */
function archHeight(
  track: Track,
  first: number,
  last: number,
  top: Point,
  lineWidth: number,
): number {
  const [a, b] = [pointOf(track, first), pointOf(track, last)];
  const wide = distance(a, b);
  if (wide < lineWidth) return 0;
  const line: FittedLine = { at: a, along: [(b[0] - a[0]) / wide, (b[1] - a[1]) / wide] };
  const high = offsetFrom(line, top);
  if (Math.abs(high) < LOW * lineWidth || Math.abs(high) > HIGH * lineWidth) return 0;
  const foot = (top[0] - a[0]) * line.along[0] + (top[1] - a[1]) * line.along[1];
  if (foot < 0.25 * wide || foot > 0.75 * wide) return 0;
  const aside = ASIDE * lineWidth;
  for (let n = first; n <= last; n++) {
    const offset = offsetFrom(line, pointOf(track, n)) * Math.sign(high);
    if (offset < -aside || offset > Math.abs(high) + lineWidth) return 0;
  }
  const [before, after] = [
    straightFor(track, line, first, -1, lineWidth),
    straightFor(track, line, last, 1, lineWidth),
  ];
  const isHeld = Math.min(before, after) >= 0 && Math.max(before, after) >= BESIDE * lineWidth;
  return isHeld ? Math.abs(high) : 0;
}

/** Pixels for which a track keeps to a line from a place on; negative where it soon leaves it. */
function straightFor(
  track: Track,
  line: FittedLine,
  from: number,
  step: 1 | -1,
  lineWidth: number,
): number {
  const start = pointOf(track, from);
  let far = 0;
  for (let n = from; n >= 0 && n < track.xs.length && far < LOOKED_AT * lineWidth; n += step) {
    const point = pointOf(track, n);
    if (Math.abs(offsetFrom(line, point)) > ASIDE * lineWidth)
      return far >= BESIDE * lineWidth ? far : -1;
    far = distance(point, start);
  }
  return far;
}
