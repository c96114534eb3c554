import { distance, type Point } from "../../base/index.ts";
import { type PinRef, splitRef } from "../../job/index.ts";
import { lengthOf } from "./polyline.ts";
import type { Scene } from "./scene.ts";

/** A piece of the proving path over the picture. */
export interface PathRun {
  readonly points: readonly Point[];
  /** Pixels of path that lie before it, from the pin where the path starts. */
  readonly start: number;
  readonly length: number;
}

interface Edge {
  readonly a: PinRef;
  readonly b: PinRef;
  readonly points: readonly Point[];
}

/**
 * The real lines of a path of parts and wires on this sheet, each with how far from the pin it
 * starts, so that the path can be drawn from the pin to its end. `from` is that pin; without it
 * the path starts at the first wire's end that nothing else of the path shares.
 */
export function pathRuns(scene: Scene, path: readonly string[], from: PinRef | null): PathRun[] {
  const edges = edgesOf(scene, path);
  const first = edges[0];
  if (!first) return [];
  const at = new Map<PinRef, Edge[]>();
  for (const edge of edges) {
    for (const end of [edge.a, edge.b]) at.set(end, [...(at.get(end) ?? []), edge]);
  }
  const loose = [first.a, first.b].find((end) => at.get(end)?.length === 1);
  const start = from !== null && at.has(from) ? from : (loose ?? first.a);
  const reached = distances(start, at);
  return edges.map(({ a, b, points }) => {
    const [fromA, fromB] = [reached.get(a) ?? 0, reached.get(b) ?? 0];
    const run = fromA <= fromB ? points : [...points].reverse();
    return { points: run, start: Math.min(fromA, fromB), length: lengthOf(points) };
  });
}

function edgesOf(scene: Scene, path: readonly string[]): Edge[] {
  const edges: Edge[] = [];
  const touched = new Map<string, PinRef[]>();
  for (const id of path) {
    const shape = scene.wireById.get(id);
    if (!shape) continue;
    const { from: a, to: b } = shape.wire;
    edges.push({ a, b, points: shape.points });
    for (const ref of [a, b]) {
      const { owner } = splitRef(ref);
      const pins = touched.get(owner) ?? [];
      if (!pins.includes(ref)) touched.set(owner, [...pins, ref]);
    }
  }
  // Through a part the path runs straight from the pin it came in by to those it leaves by.
  for (const id of path) {
    const [entry, ...exits] = scene.partById.has(id) ? (touched.get(id) ?? []) : [];
    const from = entry && scene.pins.get(entry)?.at;
    for (const exit of exits) {
      const to = scene.pins.get(exit)?.at;
      if (entry && from && to) edges.push({ a: entry, b: exit, points: [from, to] });
    }
  }
  return edges;
}

/** Shortest way along the path from `start` to each pin it reaches, pixels. */
function distances(start: PinRef, at: ReadonlyMap<PinRef, readonly Edge[]>): Map<PinRef, number> {
  const reached = new Map<PinRef, number>([[start, 0]]);
  const queue: PinRef[] = [start];
  for (let pin = queue.shift(); pin !== undefined; pin = queue.shift()) {
    const here = reached.get(pin) ?? 0;
    for (const { a, b, points } of at.get(pin) ?? []) {
      const other = a === pin ? b : a;
      const there = here + lengthOf(points);
      if (there >= (reached.get(other) ?? Number.POSITIVE_INFINITY)) continue;
      reached.set(other, there);
      queue.push(other);
    }
  }
  return reached;
}

/** The part of a run that a path drawn `progress` pixels far shows; empty before it gets there. */
export function shownOf(run: PathRun, progress: number): Point[] {
  let left = progress - run.start;
  if (left <= 0) return [];
  const shown: Point[] = [run.points[0] as Point];
  for (let i = 1; i < run.points.length && left > 0; i++) {
    const a = run.points[i - 1] as Point;
    const b = run.points[i] as Point;
    const step = distance(a, b);
    const share = step === 0 ? 1 : Math.min(1, left / step);
    shown.push([a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]);
    left -= step;
  }
  return shown;
}
