import { nearestOnSegment, type Point } from "../../base/index.ts";
import type { DrawnStroke } from "./drawn-symbol.ts";

/** How far places about a symbol lie from its nearest stroke, on a grid of its own units. */
export interface FarField {
  /** The grid's first column and row, units. */
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
  /** Units, row after row; 0 within what is filled, `FARTHEST` beyond that. */
  readonly far: Float32Array;
}

/** Units between two columns or rows. */
export const CELL = 0.15;
/** Units beyond which it is not told how far a place lies. */
export const FARTHEST = 1;

export function farFieldOf(strokes: readonly DrawnStroke[]): FarField {
  const all = strokes.flatMap(({ points }) => points);
  const left = Math.min(...all.map(([x]) => x)) - FARTHEST;
  const top = Math.min(...all.map(([, y]) => y)) - FARTHEST;
  const columns = Math.ceil((Math.max(...all.map(([x]) => x)) + FARTHEST - left) / CELL) + 1;
  const rows = Math.ceil((Math.max(...all.map(([, y]) => y)) + FARTHEST - top) / CELL) + 1;
  const far = new Float32Array(columns * rows).fill(FARTHEST);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [x, y] = [left + column * CELL, top + row * CELL];
      let least = FARTHEST;
      for (const { points, is } of strokes) {
        if (is === "fill") {
          least = isInside(points, x, y) ? 0 : Math.min(least, toOutline(points, x, y));
          continue;
        }
        for (let n = 1; n < points.length; n++) {
          least = Math.min(least, toSegment(x, y, points[n - 1] as Point, points[n] as Point));
        }
      }
      far[row * columns + column] = least;
    }
  }
  return { left, top, columns, rows, far };
}

export function isInside(points: readonly Point[], x: number, y: number): boolean {
  let inside = false;
  for (let n = 0; n < points.length; n++) {
    const [ax, ay] = points[n] as Point;
    const [bx, by] = points[(n + 1) % points.length] as Point;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

const toSegment = (x: number, y: number, a: Point, b: Point): number => {
  const [nx, ny] = nearestOnSegment([x, y], a, b);
  return Math.hypot(nx - x, ny - y);
};

/** Units from a place to a closed outline. */
export const toOutline = (points: readonly Point[], x: number, y: number): number =>
  points.reduce(
    (least, a, n) => Math.min(least, toSegment(x, y, a, points[(n + 1) % points.length] ?? a)),
    Number.POSITIVE_INFINITY,
  );
