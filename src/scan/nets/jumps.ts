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
  const arcs = crossings.flatMap((crossing) => arcAt(track, crossing, lineWidth) ?? []);
  if (arcs.length === 0) return track;
  const isKept = (_: number, n: number) => !arcs.some(([first, last]) => n > first && n < last);
  return { xs: track.xs.filter(isKept), ys: track.ys.filter(isKept) };
}

/** The feet of a jump whose top is a crossing; null where the line does not jump there. */
function arcAt(track: Track, { index, at }: TrackCrossing, lineWidth: number): Span | null {
  const count = track.xs.length;
  for (let wide = NEAREST; wide <= FARTHEST; wide += 0.5) {
    let [first, last] = [index - 1, index];
    while (first >= 0 && distance(pointOf(track, first), at) < wide * lineWidth) first--;
    while (last < count && distance(pointOf(track, last), at) < wide * lineWidth) last++;
    if (first < 0 || last >= count) return null;
    if (isArc(track, first, last, at, lineWidth)) return [first, last];
  }
  return null;
}

function isArc(track: Track, first: number, last: number, top: Point, lineWidth: number): boolean {
  const [a, b] = [pointOf(track, first), pointOf(track, last)];
  const wide = distance(a, b);
  if (wide < lineWidth) return false;
  const line: FittedLine = { at: a, along: [(b[0] - a[0]) / wide, (b[1] - a[1]) / wide] };
  const high = offsetFrom(line, top);
  if (Math.abs(high) < LOW * lineWidth || Math.abs(high) > HIGH * lineWidth) return false;
  const foot = (top[0] - a[0]) * line.along[0] + (top[1] - a[1]) * line.along[1];
  if (foot < 0.25 * wide || foot > 0.75 * wide) return false;
  const aside = ASIDE * lineWidth;
  for (let n = first; n <= last; n++) {
    const offset = offsetFrom(line, pointOf(track, n)) * Math.sign(high);
    if (offset < -aside || offset > Math.abs(high) + lineWidth) return false;
  }
  const [before, after] = [
    straightFor(track, line, first, -1, lineWidth),
    straightFor(track, line, last, 1, lineWidth),
  ];
  return Math.min(before, after) >= 0 && Math.max(before, after) >= BESIDE * lineWidth;
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
