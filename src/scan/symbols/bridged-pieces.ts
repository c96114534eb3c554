import { addTo, type Point } from "../../base/index.ts";
import type { Sliced } from "../sliced.ts";
import { cellNumber } from "./cell-number.ts";
import { type Piece, pieceOf } from "./piece.ts";

/** Strokes in one line with so short a break between them are one as well, in line widths. */
const BREAK = 4;
/** How far, in line widths, the second may begin beside the first's line. */
const BESIDE = 1;

/** Ends a slice. */
const SLICE = 500;

/** Two strokes as one where a third that crosses them has bent the thinned line, or print is broken. */
export function* bridged(pieces: readonly Piece[], line: number): Sliced<Piece[]> {
  const ends = pieces.flatMap(({ from, to, length }) => {
    const out: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    return [
      { at: to, other: from, out, length },
      { at: from, other: to, out: [-out[0], -out[1]] as Point, length },
    ];
  });
  ends.sort((a, b) => a.at[0] - b.at[0]);
  const reach = BREAK * line;
  const near = new Squares(
    ends.map(({ at }) => at),
    reach,
  );
  const found: Piece[] = [];
  for (const [n, one] of ends.entries()) {
    if (n % SLICE === SLICE - 1) yield n / ends.length;
    for (const m of near.after(n)) {
      const other = ends[m] as typeof one;
      const [dx, dy] = [other.at[0] - one.at[0], other.at[1] - one.at[1]];
      if (dx > reach || Math.abs(dy) > reach) continue;
      if (one.out[0] * other.out[0] + one.out[1] * other.out[1] > LINED_UP) continue;
      // Ahead of the one, and behind the other.
      if (dx * one.out[0] + dy * one.out[1] < 0.2 * line) continue;
      const [ax, ay] = [other.other[0] - one.other[0], other.other[1] - one.other[1]];
      const length = Math.hypot(ax, ay);
      if (length < one.length + other.length || length > MOST_BRIDGED * line) continue;
      const off = (p: Point) =>
        Math.abs((p[0] - one.other[0]) * ay - (p[1] - one.other[1]) * ax) / length;
      if (Math.max(off(one.at), off(other.at)) > BESIDE * line) continue;
      found.push(pieceOf(one.other, other.other));
    }
  }
  return found;
}

/** Cosine between the ways in which two strokes end that face one another: within 16 degrees. */
const LINED_UP = -0.96;
/** Longer strokes are found without. */
const MOST_BRIDGED = 40;

/** Points by the square in which they lie, as wide as one looks. They are sorted from left to right. */
class Squares {
  private readonly points: readonly Point[];
  private readonly side: number;
  private readonly members = new Map<number, number[]>();

  constructor(points: readonly Point[], side: number) {
    [this.points, this.side] = [points, side];
    points.forEach((point, n) => {
      addTo(this.members, this.squareOf(point, 0, 0), n);
    });
  }

  /** Of those that come after one and are as near as a square is wide: in order, with some farther off. */
  after(n: number): number[] {
    const found: number[] = [];
    for (let right = 0; right <= 1; right++) {
      for (let down = -1; down <= 1; down++) {
        const square = this.squareOf(this.points[n] as Point, right, down);
        for (const one of this.members.get(square) ?? []) if (one > n) found.push(one);
      }
    }
    return found.sort((a, b) => a - b);
  }

  private squareOf([x, y]: Point, right: number, down: number): number {
    return cellNumber(Math.floor(x / this.side) + right, Math.floor(y / this.side) + down);
  }
}
