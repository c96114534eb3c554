import { distance, nearestOnSegment, type Point } from "../../base/index.ts";
import { crossingOf, type Span, type Track, turnBetween } from "./fitted-line.ts";
import { firstOf, lastOf, type Piece, pieceOn, pointOf } from "./pieces.ts";

/** In line widths: pieces of a rounded corner are no longer. */
const CHORD = 6;
/** In line widths: the corner of the two lines lies no farther outside the rounding, ... */
const OUTSIDE = 3.3;
/** ... and both are at least so long. */
const LEG = 1.5;
/** Degrees through which a rounded corner may turn. */
const LEAST = 30;
const MOST = 120;
const MOST_PIECES = 6;

/** Pieces of a run with each rounded corner made one corner, where its two lines cross. */
export function withoutRounding(
  track: Track,
  pieces: readonly Piece[],
  lineWidth: number,
): Piece[] {
  const left = [...pieces];
  // The whole of a rounding before a part of it.
  for (let many = MOST_PIECES; many > 0; many--) {
    for (let n = 0; n + many + 1 < left.length; n++) {
      const legs = legsOf(track, left.slice(n, n + many + 2), lineWidth);
      if (legs) left.splice(n, many + 2, ...legs);
    }
  }
  return left;
}

/** The two lines that a rounded corner lies between, without what bends already; null where it is none. */
function legsOf(
  track: Track,
  pieces: readonly Piece[],
  lineWidth: number,
): readonly [Piece, Piece] | null {
  const chords = pieces.slice(1, -1);
  const longest = Math.max(...chords.map(({ length }) => length));
  if (longest > CHORD * lineWidth) return null;
  const before = straightPart(track, pieces[0] as Piece, longest / 2, false, lineWidth);
  const after = straightPart(track, pieces.at(-1) as Piece, longest / 2, true, lineWidth);
  const enough = Math.max(LEG * lineWidth, 0.6 * longest);
  if (Math.min(before.length, after.length) < enough) return null;
  const turn = turnBetween(before.line, after.line);
  if (turn < LEAST || turn > MOST) return null;
  // All the same way round.
  const turns = pieces
    .slice(1)
    .map((piece, n) => turnBetween((pieces[n] as Piece).line, piece.line));
  if (turns.reduce((sum, one) => sum + one, 0) > turn + 25) return null;
  const corner = crossingOf(before.line, after.line);
  if (!corner) return null;
  const [start, end] = [pointOf(track, lastOf(before)), pointOf(track, firstOf(after))];
  const isAhead =
    along(before, start, corner) > -lineWidth && along(after, end, corner) < lineWidth;
  const points: Point[] = [
    pointOf(track, firstOf(chords[0] as Piece)),
    ...chords.map((chord) => pointOf(track, lastOf(chord))),
  ];
  const far = points.slice(1).map((point, n) => {
    return distance(corner, nearestOnSegment(corner, points[n] as Point, point));
  });
  return isAhead && Math.min(...far) <= OUTSIDE * lineWidth ? [before, after] : null;
}

/** A piece without what lies near the rounding, where enough of it is left. */
function straightPart(
  track: Track,
  piece: Piece,
  cut: number,
  isStart: boolean,
  lineWidth: number,
): Piece {
  let [first, last] = [firstOf(piece), lastOf(piece)];
  const bend = pointOf(track, isStart ? first : last);
  while (isStart && first < last && distance(pointOf(track, first), bend) < cut) first++;
  while (!isStart && last > first && distance(pointOf(track, last), bend) < cut) last--;
  const spans = piece.spans.flatMap(([from, to]): Span[] => {
    const [a, b] = [Math.max(from, first), Math.min(to, last)];
    return b > a ? [[a, b]] : [];
  });
  const part = spans.length > 0 ? pieceOn(track, spans, lineWidth) : null;
  return part && part.length >= LEG * lineWidth ? part : piece;
}

/** How far a point lies beyond another along a piece. */
const along = ({ line }: Piece, from: Point, to: Point) =>
  (to[0] - from[0]) * line.along[0] + (to[1] - from[1]) * line.along[1];
