import { distance, type Point } from "../../base/index.ts";
import { trackCorners } from "../track-corners.ts";
import {
  crossingOf,
  type FittedLine,
  lineThrough,
  offsetFrom,
  type Span,
  type Track,
  turnBetween,
} from "./fitted-line.ts";

/** A straight piece of a run. */
export interface Piece {
  /** What of the run's track lies on it. */
  readonly spans: readonly Span[];
  readonly line: FittedLine;
  /** Pixels from its first to its last. */
  readonly length: number;
}

/** Farther from straight than this, a run has a corner: part of a line's width, and pixels. */
const STRAY = 0.35;
const STRAY_PIXELS = 0.9;
/** In line widths: so near a corner thinned lines cut it. */
const CUT = 1.2;
/** In line widths: a shorter piece is a kink of the ink. */
const KINK = 1.5;
/** ... and the corner of two pieces lies no farther from where they end. */
const CORNER = 3.2;
/** Degrees. */
const PARALLEL = 8;

export const firstOf = (piece: Piece): number => piece.spans[0]?.[0] ?? 0;
export const lastOf = (piece: Piece): number => piece.spans.at(-1)?.[1] ?? 0;
export const pointOf = ({ xs, ys }: Track, n: number): Point => [xs[n] as number, ys[n] as number];
export const strayOf = (lineWidth: number): number => STRAY * lineWidth + STRAY_PIXELS;

/** A piece on some spans of a track; null where it has no direction. */
export function pieceOn(track: Track, spans: readonly Span[], lineWidth: number): Piece | null {
  const cut = CUT * lineWidth;
  const length = lengthOf(track, spans);
  const inner = length > 4 * cut ? within(track, spans, cut) : spans;
  const line =
    lineThrough(track, inner, Math.max(1, 0.4 * lineWidth)) ?? lineThrough(track, spans, 2);
  return line && { spans, line, length };
}

/** The straight pieces of a track, as few as it has corners. */
export function piecesOf(track: Track, lineWidth: number): Piece[] {
  const stray = strayOf(lineWidth);
  const breaks = trackCorners(track.xs, track.ys, track.xs.length, stray);
  const pieces = breaks.slice(1).flatMap((end, n): Piece[] => {
    const piece = pieceOn(track, [[breaks[n] as number, end]], lineWidth);
    return piece ? [piece] : [];
  });
  return withoutKinks(track, straightened(track, pieces, lineWidth), lineWidth);
}

/** Neighbours that are one straight piece after all are made one. */
function straightened(track: Track, pieces: readonly Piece[], lineWidth: number): Piece[] {
  const found: Piece[] = [];
  for (const piece of pieces) {
    const before = found.at(-1);
    const both = before && oneOf(track, before, piece, lineWidth);
    if (both) found.splice(-1, 1, both);
    else found.push(piece);
  }
  return found;
}

/** Two pieces as one; null where that is not straight. */
function oneOf(track: Track, a: Piece, b: Piece, lineWidth: number): Piece | null {
  if (turnBetween(a.line, b.line) > 20) return null;
  const spans: Span[] = [[firstOf(a), lastOf(b)]];
  const piece = pieceOn(track, spans, lineWidth);
  if (!piece) return null;
  const stray = strayOf(lineWidth);
  let far = 0;
  for (let n = firstOf(a); n <= lastOf(b); n++) {
    if (Math.abs(offsetFrom(piece.line, pointOf(track, n))) > stray) far++;
  }
  return far <= 0.05 * (lastOf(b) - firstOf(a)) ? piece : null;
}

/** Short pieces that only round a corner off, or that are a bump of the ink, left out. */
function withoutKinks(track: Track, pieces: readonly Piece[], lineWidth: number): Piece[] {
  const left = [...pieces];
  for (let n = 0; n < left.length && left.length > 1; ) {
    const piece = left[n] as Piece;
    const [before, after] = [left[n - 1], left[n + 1]];
    if (piece.length >= KINK * lineWidth) {
      n++;
      continue;
    }
    if (!before || !after) {
      left.splice(n, 1);
      n = Math.max(0, n - 1);
      continue;
    }
    const corner = crossingOf(before.line, after.line);
    const isCorner =
      corner !== null &&
      turnBetween(before.line, after.line) > PARALLEL &&
      Math.max(
        distance(corner, pointOf(track, lastOf(before))),
        distance(corner, pointOf(track, firstOf(after))),
      ) <=
        CORNER * lineWidth;
    const both = isCorner ? null : oneOf(track, before, after, lineWidth);
    if (isCorner) left.splice(n, 1);
    else if (both) left.splice(n - 1, 3, both);
    else {
      n++;
      continue;
    }
    n = Math.max(0, n - 2);
  }
  return left;
}

function lengthOf(track: Track, spans: readonly Span[]): number {
  const [first, last] = [spans[0]?.[0] ?? 0, spans.at(-1)?.[1] ?? 0];
  return distance(pointOf(track, first), pointOf(track, last));
}

/** Spans without what lies nearer than `cut` to their outer ends. */
function within(track: Track, spans: readonly Span[], cut: number): Span[] {
  const [start, end] = [pointOf(track, spans[0]?.[0] ?? 0), pointOf(track, spans.at(-1)?.[1] ?? 0)];
  return spans.flatMap(([from, to]): Span[] => {
    let [first, last] = [from, to];
    while (first < last && distance(pointOf(track, first), start) < cut) first++;
    while (last > first && distance(pointOf(track, last), end) < cut) last--;
    return last > first ? [[first, last]] : [];
  });
}
