import { distance, type Point } from "../../base/index.ts";
import type { Id, PinRef } from "../../job/index.ts";
import { partAt, pinAt, wireAt } from "./hit-test.ts";
import { samePoint } from "./polyline.ts";
import type { Scene, WireShape } from "./scene.ts";

/** Where an end or a corner of a wire being drawn comes to lie. */
export type Snap =
  | { readonly onto: "pin"; readonly at: Point; readonly ref: PinRef; readonly out: Point | null }
  /** `way`: unit vector along the wire there. */
  | { readonly onto: "wire"; readonly at: Point; readonly wire: Id; readonly way: Point }
  | { readonly onto: "ground"; readonly at: Point };

/** A press on a symbol's body reaches this much further for its nearest pin. */
const BODY_REACH = 3;

/**
 * Snaps `p` to a pin, else to a wire, else to the straight across or down from `from`, each within
 * `reach` pixels of the sheet.
 */
export function snap(scene: Scene, p: Point, reach: number, from: Point | null): Snap {
  const pin = pinAt(scene, p, reach) ?? bodyPin(scene, p, reach);
  if (pin) {
    const out = scene.pins.get(pin.ref)?.out ?? null;
    return { onto: "pin", at: pin.at, ref: pin.ref, out };
  }
  const wire = wireAt(scene, p, reach);
  if (wire) {
    const ref = endNear(wire.shape, wire.spot.at, reach);
    if (ref) {
      return { onto: "pin", at: ref.at, ref: ref.ref, out: scene.pins.get(ref.ref)?.out ?? null };
    }
    const straight = from && squareSpot(wire.shape, wire.spot.segment, from);
    const at = straight && distance(straight, wire.spot.at) <= reach ? straight : wire.spot.at;
    const way = wayOf(wire.shape, wire.spot.segment);
    return { onto: "wire", at, wire: wire.shape.wire.id, way };
  }
  return { onto: "ground", at: from ? inLineWith(from, p, reach) : p };
}

function bodyPin(scene: Scene, p: Point, reach: number) {
  const part = partAt(scene, p, reach / 2);
  if (!part) return null;
  let best: { ref: PinRef; at: Point } | null = null;
  let nearest = reach * BODY_REACH;
  for (const spot of part.pins) {
    const away = distance(spot.at, p);
    if (away > nearest) continue;
    nearest = away;
    best = spot;
  }
  return best;
}

/** The end of a wire that is nearer than `reach` to a spot on it: a join there would be the same. */
function endNear({ wire, points }: WireShape, at: Point, reach: number) {
  const first = points[0] as Point;
  const last = points.at(-1) as Point;
  const [ref, end] =
    distance(first, at) <= distance(last, at) ? [wire.from, first] : [wire.to, last];
  return distance(end, at) <= reach / 3 || samePoint(end, at) ? { ref, at: end } : null;
}

function wayOf({ points }: WireShape, segment: number): Point {
  const a = points[segment] as Point;
  const b = points[segment + 1] as Point;
  const length = distance(a, b) || 1;
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}

/** The way a wire leaves what it snapped to when it heads for `other`: out of a pin, square to a wire. */
export function wayOut(from: Snap, other: Point): Point | null {
  if (from.onto === "pin") return from.out;
  if (from.onto === "ground") return null;
  if (Math.abs(from.way[0]) > 0.99) return [0, other[1] >= from.at[1] ? 1 : -1];
  return Math.abs(from.way[1]) > 0.99 ? [other[0] >= from.at[0] ? 1 : -1, 0] : null;
}

/** The spot of a segment that is straight across or down from `from`; null when there is none. */
function squareSpot(shape: WireShape, segment: number, from: Point): Point | null {
  const a = shape.points[segment] as Point;
  const b = shape.points[segment + 1] as Point;
  const spots: Point[] = [];
  for (const axis of [0, 1] as const) {
    const run = b[axis] - a[axis];
    if (run === 0) continue;
    const share = (from[axis] - a[axis]) / run;
    if (share <= 0 || share >= 1) continue;
    spots.push([a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]);
  }
  spots.sort((one, two) => distance(one, from) - distance(two, from));
  return spots[0] ?? null;
}

/** `p`, or the point straight across or down from `from` when that is within half of `reach`. */
export function inLineWith(from: Point, p: Point, reach: number): Point {
  const x = Math.abs(p[0] - from[0]) <= reach / 2 ? from[0] : p[0];
  const y = Math.abs(p[1] - from[1]) <= reach / 2 ? from[1] : p[1];
  return [x, y];
}
