import { type Point, subtract } from "../../base/index.ts";
import { type Id, type Job, type PinRef, splitRef } from "../../job/index.ts";
import { plain } from "./draft.ts";
import { type PartShape, shapeOf } from "./part-shape.ts";
import { samePoint } from "./polyline.ts";
import { setPath } from "./split-wire.ts";

/** Traced over a scan that lies a degree askew, a line still counts as level. */
const ASKEW = 0.03;

const level = (a: Point, b: Point) => Math.abs(a[1] - b[1]) < 0.01 + ASKEW * Math.abs(a[0] - b[0]);
const upright = (a: Point, b: Point) =>
  Math.abs(a[0] - b[0]) < 0.01 + ASKEW * Math.abs(a[1] - b[1]);
const exact = (a: Point, b: Point) => Math.abs(a[0] - b[0]) < 0.01 || Math.abs(a[1] - b[1]) < 0.01;

/**
 * Corners of a wire after its ends have gone from where `points` starts and stops to `from` and
 * `to`. Segments at right angles stay so: the corner next to an end slides with it, and a straight
 * wire whose ends part gets a step in its middle. A step that closes again is taken out.
 */
export function followEnds(points: readonly Point[], from: Point, to: Point): Point[] {
  let run = [...points];
  run = followEnd(run, from);
  run = followEnd(run.reverse(), to).reverse();
  const corners = run.slice(1, -1);
  const [a, b] = corners;
  return corners.length === 2 && a && b && samePoint(a, b) ? [] : corners;
}

/** Takes the first point of `run` to `to`. */
function followEnd(run: readonly Point[], to: Point): Point[] {
  const [dx, dy] = subtract(to, run[0] as Point);
  if (dx === 0 && dy === 0) return [...run];
  const next = [...run];
  next[0] = to;
  const last = run.length - 1;
  const isLevel = level(run[0] as Point, run[1] as Point);
  if (!isLevel && !upright(run[0] as Point, run[1] as Point)) return next;
  const inLine = isLevel ? level : upright;
  // Every corner in line with the end goes along sideways, up to the first bend.
  let bend = 1;
  while (bend < last && inLine(run[bend] as Point, run[bend + 1] as Point)) bend++;
  if (bend === last) return stepped(next, isLevel, exact(run[0] as Point, run[1] as Point));
  for (let i = 1; i <= bend; i++) {
    const [x, y] = run[i] as Point;
    next[i] = isLevel ? [x, y + dy] : [x + dx, y];
  }
  return next;
}

/** A straight wire whose end has left the line: a step in the middle when it has no corner yet. */
function stepped(run: Point[], wasLevel: boolean, wasExact: boolean): Point[] {
  const start = run[0] as Point;
  const end = run.at(-1) as Point;
  const askew = wasLevel ? level(start, end) : upright(start, end);
  const inLine = wasExact ? exact(start, end) : askew;
  if (run.length > 2 || inLine) return run;
  const middle: Point = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2];
  return wasLevel
    ? [start, [middle[0], start[1]], [middle[0], end[1]], end]
    : [start, [start[0], middle[1]], [end[0], middle[1]], end];
}

/**
 * Makes `change` to the parts `ids` and lets the wires on them follow. Wires wholly between those
 * parts have their corners put through `inner`.
 */
export function withWiresFollowing(
  draft: Job,
  ids: ReadonlySet<Id>,
  change: () => void,
  inner: (corner: Point) => Point,
): void {
  const before = plain(draft).diagram;
  const shapes = new Map<Id, PartShape>();
  for (const part of before.parts) shapes.set(part.id, shapeOf(part));
  change();
  const after = plain(draft).diagram;
  const moved = new Map<Id, PartShape>();
  for (const part of after.parts) if (ids.has(part.id)) moved.set(part.id, shapeOf(part));

  const spot = (map: ReadonlyMap<Id, PartShape>, ref: PinRef): Point | null => {
    const shape = map.get(splitRef(ref).owner);
    return shape ? (shape.pins.find((one) => one.ref === ref)?.at ?? shape.part.at) : null;
  };
  before.wires.forEach((wire, index) => {
    const inFrom = ids.has(splitRef(wire.from).owner);
    const inTo = ids.has(splitRef(wire.to).owner);
    const written = inFrom || inTo ? draft.diagram.wires[index] : undefined;
    const oldFrom = spot(shapes, wire.from);
    const oldTo = spot(shapes, wire.to);
    if (!written || !oldFrom || !oldTo) return;
    if (inFrom && inTo) {
      if (wire.path) setPath(written, wire.path.map(inner));
      return;
    }
    const newFrom = spot(moved, wire.from) ?? oldFrom;
    const newTo = spot(moved, wire.to) ?? oldTo;
    if (samePoint(oldFrom, newFrom) && samePoint(oldTo, newTo)) return;
    setPath(written, followEnds([oldFrom, ...(wire.path ?? []), oldTo], newFrom, newTo));
  });
}
