import type { Point } from "../../base/index.ts";

/** A straight stroke of a thinned line, pixels. */
export interface Piece {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

/** A stroke with the places of its ends. */
export interface RawPiece {
  readonly a: Point;
  readonly b: Point;
  /** Places of its ends; -1 at a corner within a line. */
  readonly from: number;
  readonly to: number;
}

export const pieceOf = (from: Point, to: Point): Piece => ({
  from,
  to,
  length: Math.hypot(to[0] - from[0], to[1] - from[1]),
});
