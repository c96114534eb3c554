import { type Box, nearestOnSegment, type Point } from "../../base/index.ts";
import type { DrawnStroke, DrawnSymbol } from "./drawn-symbol.ts";

/** A symbol as points to be held against a page, so mixed that the first few stand for all. */
export interface Sampled {
  readonly xs: Float32Array;
  readonly ys: Float32Array;
  /** The stroke of each point. */
  readonly strokeOf: Uint16Array;
  readonly strokes: readonly DrawnStroke["is"][];
  /** Where paper must be: x and y in turn. */
  readonly bare: Float32Array;
  /** How far a place lies from the nearest stroke, units; 0 within what is filled. */
  readonly farFrom: (x: number, y: number) => number;
  /** Length of its strokes, leads left out, units. */
  readonly length: number;
  /** Between its nearest two strokes that lie side by side, units along x and along y. */
  readonly finest: Point;
}

/** Units between two points of a stroke. */
const SPACING = 0.3;

const known = new WeakMap<DrawnSymbol, Sampled>();

export function sampledOf(symbol: DrawnSymbol): Sampled {
  const found = known.get(symbol);
  if (found) return found;
  const sampled = sample(symbol.strokes);
  known.set(symbol, sampled);
  return sampled;
}

/** Says what points stand for a symbol that was not drawn as strokes. */
export function giveSampled(symbol: DrawnSymbol, sampled: Sampled): void {
  known.set(symbol, sampled);
}

/** Points of a printed symbol, units; each quarter of its box counts as a stroke. */
export function pointSample(points: readonly Point[], { left, top, right, bottom }: Box): Sampled {
  const [middleX, middleY] = [(left + right) / 2, (top + bottom) / 2];
  const kept: Point[] = [];
  for (const at of points) {
    const isNew = kept.every(([x, y]) => Math.hypot(x - at[0], y - at[1]) >= 0.8 * SPACING);
    if (isNew) kept.push(at);
  }
  const mixed = mixedOrder(kept.length).map((n) => kept[n] as Point);
  return {
    xs: Float32Array.from(mixed, ([x]) => x),
    ys: Float32Array.from(mixed, ([, y]) => y),
    strokeOf: Uint16Array.from(mixed, ([x, y]) => (x < middleX ? 0 : 1) + (y < middleY ? 0 : 2)),
    strokes: ["line", "line", "line", "line"],
    bare: new Float32Array(),
    farFrom: farField(kept.map((at) => ({ points: [at, at], is: "line" }))),
    length: kept.length * SPACING,
    finest: [1, 1],
  };
}

function sample(strokes: readonly DrawnStroke[]): Sampled {
  const points: { at: Point; stroke: number }[] = [];
  let length = 0;
  strokes.forEach((stroke, n) => {
    if (stroke.is === "maybe" || stroke.is === "none") return;
    const on =
      stroke.is === "fill"
        ? within(stroke.points)
        : stroke.is === "dot"
          ? stroke.points
          : along(stroke.points);
    for (const at of on) points.push({ at, stroke: n });
    if (stroke.is !== "lead") length += on.length * SPACING;
  });
  const mixed = mixedOrder(points.length).map((n) => points[n] as (typeof points)[number]);
  const bare = strokes.filter(({ is }) => is === "none").flatMap(({ points: on }) => along(on));
  const distanceTo = farField(strokes.filter(({ is }) => is !== "none"));
  return {
    xs: Float32Array.from(mixed, ({ at }) => at[0]),
    ys: Float32Array.from(mixed, ({ at }) => at[1]),
    strokeOf: Uint16Array.from(mixed, ({ stroke }) => stroke),
    strokes: strokes.map(({ is }) => is),
    bare: Float32Array.from(bare.flat()),
    farFrom: distanceTo,
    length,
    finest: finestOf(strokes),
  };
}

/** Strokes that nearly run the same way, as far as they lie side by side. */
function finestOf(strokes: readonly DrawnStroke[]): Point {
  let [leastX, leastY] = [1, 1];
  const straight = strokes.filter(
    ({ points, is }) => points.length === 2 && (is === "line" || is === "lead"),
  );
  straight.forEach(({ points: [a, b] }, n) => {
    for (const { points } of straight.slice(n + 1)) {
      const [c, d] = points;
      if (!a || !b || !c || !d) continue;
      const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
      const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
      const length = Math.hypot(ux, uy);
      if (Math.abs(ux * vy - uy * vx) > 0.2 * length * Math.hypot(vx, vy)) continue;
      const [mx, my] = [(c[0] + d[0]) / 2 - a[0], (c[1] + d[1]) / 2 - a[1]];
      const along = (mx * ux + my * uy) / length;
      const apart = Math.abs(mx * uy - my * ux) / length;
      if (along <= 0 || along >= length || apart < 0.05) continue;
      if (Math.abs(ux) > Math.abs(uy)) leastY = Math.min(leastY, apart);
      else leastX = Math.min(leastX, apart);
    }
  });
  return [leastX, leastY];
}

function along(points: readonly Point[]): Point[] {
  const found: Point[] = [];
  for (let n = 1; n < points.length; n++) {
    const [a, b] = [points[n - 1] as Point, points[n] as Point];
    const steps = Math.max(1, Math.round(Math.hypot(b[0] - a[0], b[1] - a[1]) / SPACING));
    for (let step = n === 1 ? 0 : 1; step <= steps; step++) {
      const share = step / steps;
      found.push([a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]);
    }
  }
  return found;
}

/** Places well within a closed outline. */
function within(points: readonly Point[]): Point[] {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const found: Point[] = [];
  for (let x = Math.min(...xs); x <= Math.max(...xs); x += SPACING / 2) {
    for (let y = Math.min(...ys); y <= Math.max(...ys); y += SPACING / 2) {
      if (isInside(points, x, y) && toOutline(points, x, y) > 0.12) found.push([x, y]);
    }
  }
  return found;
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

const toOutline = (points: readonly Point[], x: number, y: number): number =>
  points.reduce(
    (least, a, n) => Math.min(least, toSegment(x, y, a, points[(n + 1) % points.length] ?? a)),
    Number.POSITIVE_INFINITY,
  );

/** Numbers up to `count` in steps of the golden ratio: any first few are spread over all. */
function mixedOrder(count: number): number[] {
  let step = Math.max(1, Math.round(count * 0.618));
  const shared = (a: number, b: number): number => (b === 0 ? a : shared(b, a % b));
  while (shared(step, count) > 1) step++;
  return Array.from({ length: count }, (_, n) => (n * step) % count);
}

const CELL = 0.15;
const REACH = 1;

/** Distances on a fine grid around the strokes, worked out at the first question. */
function farField(strokes: readonly DrawnStroke[]): (x: number, y: number) => number {
  let grid: { left: number; top: number; columns: number; rows: number; far: Float32Array } | null =
    null;
  const make = () => {
    const all = strokes.flatMap(({ points }) => points);
    const left = Math.min(...all.map(([x]) => x)) - REACH;
    const top = Math.min(...all.map(([, y]) => y)) - REACH;
    const columns = Math.ceil((Math.max(...all.map(([x]) => x)) + REACH - left) / CELL) + 1;
    const rows = Math.ceil((Math.max(...all.map(([, y]) => y)) + REACH - top) / CELL) + 1;
    const far = new Float32Array(columns * rows).fill(REACH);
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const [x, y] = [left + column * CELL, top + row * CELL];
        let least = REACH;
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
  };
  return (x, y) => {
    grid ??= make();
    const column = Math.round((x - grid.left) / CELL);
    const row = Math.round((y - grid.top) / CELL);
    if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return REACH;
    return grid.far[row * grid.columns + column] as number;
  };
}
