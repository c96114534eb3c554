import type { Point } from "../base/index.ts";

/** Corners of a page or a box, clockwise from the top left as the reader sees them. */
export type Quad = readonly [Point, Point, Point, Point];

/** Row by row, the last number 1: (x, y) goes to ((ax+by+c)/(gx+hy+1), (dx+ey+f)/(gx+hy+1)). */
export type Homography = readonly [
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  g: number,
  h: number,
];

/**
 * The one homography that takes each corner of `from` to that of `to`; null where three of four
 * corners lie on a line, which no camera makes of a page. Eight equations in eight unknowns, two a
 * corner (R. Hartley and A. Zisserman, Multiple View Geometry, 2nd ed., section 2.3).
 */
export function homographyBetween(from: Quad, to: Quad): Homography | null {
  if (isFlat(from) || isFlat(to)) return null;
  const rows: number[][] = [];
  from.forEach(([x, y], corner) => {
    const [u, v] = to[corner] as Point;
    rows.push([x, y, 1, 0, 0, 0, -x * u, -y * u, u]);
    rows.push([0, 0, 0, x, y, 1, -x * v, -y * v, v]);
  });
  return solve(rows) as unknown as Homography | null;
}

export function apply([a, b, c, d, e, f, g, h]: Homography, [x, y]: Point): Point {
  const w = g * x + h * y + 1;
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/** Three corners of four on one line, or nearly so for the quad's size. */
function isFlat(quad: Quad): boolean {
  const size = Math.max(
    ...quad.flatMap((p) => quad.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1]))),
  );
  return quad.some((_, left) => {
    const [a, b, c] = quad.filter((_, at) => at !== left) as [Point, Point, Point];
    const twiceArea = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    return Math.abs(twiceArea) < 1e-9 * size * size;
  });
}

/** Gaussian elimination with the largest pivot; null where the equations don't tell the unknowns. */
function solve(rows: number[][]): number[] | null {
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    let best = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(at(rows, row, column)) > Math.abs(at(rows, best, column))) best = row;
    }
    [rows[column], rows[best]] = [rows[best] as number[], rows[column] as number[]];
    const pivot = at(rows, column, column);
    if (pivot === 0) return null;
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const factor = at(rows, row, column) / pivot;
      if (factor === 0) continue;
      const changed = rows[row] as number[];
      for (let k = column; k <= size; k++)
        changed[k] = at(rows, row, k) - factor * at(rows, column, k);
    }
  }
  return rows.map((row, k) => (row[size] as number) / (row[k] as number));
}

const at = (rows: readonly number[][], row: number, column: number) =>
  (rows[row] as number[])[column] as number;
