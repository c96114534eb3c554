import type { Box, Point } from "../../base/index.ts";
import type { DrawnStroke, DrawnSymbol } from "./drawn-symbol.ts";
import { type FarField, farFieldOf, isInside, toOutline } from "./far-field.ts";

/** A symbol as points to be held against a page, so mixed that the first few stand for all. */
export interface Sampled {
  readonly xs: Float32Array;
  readonly ys: Float32Array;
  /** The stroke of each point, ... */
  readonly strokeOf: Uint16Array;
  /** ... and how many each stroke has. */
  readonly counts: Uint16Array;
  /** Of each point 1 if it lies in ink, 0 if on the middle of a line. */
  readonly inInk: Uint8Array;
  readonly strokes: readonly DrawnStroke["is"][];
  /** Where paper must be: x and y in turn. */
  readonly bare: Float32Array;
  /** How far places lie from the nearest stroke; worked out at the first question. */
  readonly field: () => FarField;
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
  const quarterOf = ([x, y]: Point) => (x < middleX ? 0 : 1) + (y < middleY ? 0 : 2);
  return {
    ...inMixedOrder(
      kept.map((at) => ({ at, stroke: quarterOf(at) })),
      ["line", "line", "line", "line"],
    ),
    bare: new Float32Array(),
    field: atFirst(() => farFieldOf(kept.map((at) => ({ points: [at, at], is: "line" })))),
    length: kept.length * SPACING,
    finest: [1, 1],
  };
}

function atFirst<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

interface StrokePoint {
  readonly at: Point;
  readonly stroke: number;
}

function sample(strokes: readonly DrawnStroke[]): Sampled {
  const points: StrokePoint[] = [];
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
  const bare = strokes.filter(({ is }) => is === "none").flatMap(({ points: on }) => along(on));
  return {
    ...inMixedOrder(
      points,
      strokes.map(({ is }) => is),
    ),
    bare: Float32Array.from(bare.flat()),
    field: atFirst(() => farFieldOf(strokes.filter(({ is }) => is !== "none"))),
    length,
    finest: finestOf(strokes),
  };
}

function inMixedOrder(points: readonly StrokePoint[], strokes: Sampled["strokes"]) {
  const mixed = mixedOrder(points.length).map((n) => points[n] as StrokePoint);
  const counts = new Uint16Array(strokes.length);
  for (const { stroke } of points) counts[stroke] = (counts[stroke] as number) + 1;
  const isInInk = (is: DrawnStroke["is"] | undefined) => is === "fill" || is === "dot";
  return {
    xs: Float32Array.from(mixed, ({ at }) => at[0]),
    ys: Float32Array.from(mixed, ({ at }) => at[1]),
    strokeOf: Uint16Array.from(mixed, ({ stroke }) => stroke),
    counts,
    inInk: Uint8Array.from(mixed, ({ stroke }) => (isInInk(strokes[stroke]) ? 1 : 0)),
    strokes,
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

/** Numbers up to `count` in steps of the golden ratio: any first few are spread over all. */
function mixedOrder(count: number): number[] {
  let step = Math.max(1, Math.round(count * 0.618));
  const shared = (a: number, b: number): number => (b === 0 ? a : shared(b, a % b));
  while (shared(step, count) > 1) step++;
  return Array.from({ length: count }, (_, n) => (n * step) % count);
}
