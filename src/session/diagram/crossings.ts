import { addTo, type Box, distance, growBox, type Point, spatialGrid } from "../../base/index.ts";
import type { Id } from "../../job/index.ts";
import { type Scene, type WireShape, wiresIn } from "./scene.ts";

/** A spot where a wire passes another without touching it. */
export interface Crossing {
  readonly segment: number;
  /** Pixels from the segment's first point. */
  readonly along: number;
  /** The wire passed over. */
  readonly over: Id;
}

/** A crossing this near to an end of either segment is a touch or a corner, pixels. */
const CLEAR = 2;

interface Segment {
  readonly wire: WireShape;
  readonly index: number;
  readonly a: Point;
  readonly b: Point;
}

const found = new WeakMap<Scene, ReadonlyMap<Id, readonly Crossing[]>>();

type Crossings = ReadonlyMap<Id, readonly Crossing[]>;

/** Those found last: most edits leave nearly every wire where it was. */
let last: { readonly scene: Scene; readonly crossings: Crossings } | null = null;

/**
 * For each wire that has to hop, where it hops over others: sorted along the wire. Of two wires
 * that cross, the flatter segment hops.
 */
export function crossingsOf(scene: Scene): Crossings {
  let crossings = found.get(scene);
  if (!crossings) {
    crossings =
      (last && crossingsAfter(last.scene, last.crossings, scene)) ?? findCrossings(scene.wires);
    last = { scene, crossings };
    found.set(scene, crossings);
  }
  return crossings;
}

/** More wires laid anew than these, and all are looked at. */
const MOST_LAID = 60;

/** What comes of it when some wires are laid anew in their places; null where more than that differs. */
function crossingsAfter(from: Scene, before: Crossings, to: Scene): Crossings | null {
  if (from.wires.length !== to.wires.length) return null;
  const laid = new Set<number>();
  for (let place = 0; place < to.wires.length; place++) {
    const [old, now] = [from.wires[place] as WireShape, to.wires[place] as WireShape];
    if (old === now) continue;
    if (old.wire.id !== now.wire.id || laid.size === MOST_LAID) return null;
    if (!liesAlike(old, now)) laid.add(place);
  }
  if (laid.size === 0) return before;
  const now = new Map(before);
  const ids = new Set([...laid].map((place) => (to.wires[place] as WireShape).wire.id));
  for (const place of laid) {
    const old = from.wires[place] as WireShape;
    now.delete(old.wire.id);
    for (const { wire } of wiresIn(from, old.box)) {
      const hops = now.get(wire.id);
      const kept = hops?.filter(({ over }) => !ids.has(over));
      if (!hops || !kept || kept.length === hops.length) continue;
      if (kept.length === 0) now.delete(wire.id);
      else now.set(wire.id, kept);
    }
  }
  const fresh = new Map<Id, Crossing[]>();
  for (const place of laid) {
    const one = to.wires[place] as WireShape;
    for (const other of to.wireGrid.near(one.box)) {
      // Two that are both laid anew meet once.
      if (other < place && laid.has(other)) continue;
      const two = to.wires[other] as WireShape;
      if (other < place) hopsBetween(segmentsOf(two), segmentsOf(one), fresh);
      else if (other > place) hopsBetween(segmentsOf(one), segmentsOf(two), fresh);
      else {
        const own = segmentsOf(one);
        for (let at = 0; at < own.length; at++)
          hopsBetween(own.slice(at, at + 1), own.slice(at + 1), fresh);
      }
    }
  }
  for (const [id, hops] of fresh) now.set(id, sortedHops([...(now.get(id) ?? []), ...hops]));
  return now;
}

/** Whether they run over the same points. */
const liesAlike = (one: WireShape, other: WireShape): boolean =>
  one.points.length === other.points.length &&
  one.points.every(([x, y], place) => {
    const at = other.points[place] as Point;
    return x === at[0] && y === at[1];
  });

const segmentsOf = (wire: WireShape): Segment[] =>
  wire.points.slice(1).map((b, index) => ({ wire, index, a: wire.points[index] as Point, b }));

/** Adds where those and these cross; those come first in the order of wires. */
function hopsBetween(
  those: readonly Segment[],
  these: readonly Segment[],
  hops: Map<Id, Crossing[]>,
): void {
  for (const one of those) {
    for (const two of these) {
      const at = cross(one, two);
      if (!at) continue;
      const [hopper, over] = steepness(one) <= steepness(two) ? [one, two] : [two, one];
      const along = distance(hopper.a, at);
      addTo(hops, hopper.wire.wire.id, { segment: hopper.index, along, over: over.wire.wire.id });
    }
  }
}

const sortedHops = (hops: Crossing[]): Crossing[] =>
  hops.sort((a, b) => a.segment - b.segment || a.along - b.along);

function findCrossings(wires: readonly WireShape[]): Map<Id, Crossing[]> {
  const segments = wires.flatMap(segmentsOf);
  const boxes = segments.map(boxOf);
  const grid = spatialGrid(boxes, 200);
  const hops = new Map<Id, Crossing[]>();
  segments.forEach((one, index) => {
    for (const other of grid.near(boxes[index] as Box)) {
      if (other > index) hopsBetween([one], [segments[other] as Segment], hops);
    }
  });
  for (const list of hops.values()) sortedHops(list);
  return hops;
}

const boxOf = ({ a, b }: Segment): Box => ({
  left: Math.min(a[0], b[0]),
  top: Math.min(a[1], b[1]),
  right: Math.max(a[0], b[0]),
  bottom: Math.max(a[1], b[1]),
});

const steepness = ({ a, b }: Segment) => Math.abs(b[1] - a[1]) - Math.abs(b[0] - a[0]);

/** Where two segments cross clear of all four ends; null when they don't. */
function cross(one: Segment, two: Segment): Point | null {
  const rx = one.b[0] - one.a[0];
  const ry = one.b[1] - one.a[1];
  const sx = two.b[0] - two.a[0];
  const sy = two.b[1] - two.a[1];
  const area = rx * sy - ry * sx;
  if (Math.abs(area) < 1e-9) return null;
  const qx = two.a[0] - one.a[0];
  const qy = two.a[1] - one.a[1];
  const t = (qx * sy - qy * sx) / area;
  const u = (qx * ry - qy * rx) / area;
  const clearT = CLEAR / Math.hypot(rx, ry);
  const clearU = CLEAR / Math.hypot(sx, sy);
  if (t < clearT || t > 1 - clearT || u < clearU || u > 1 - clearU) return null;
  return [one.a[0] + rx * t, one.a[1] + ry * t];
}

/**
 * True when the straight run between two points, level or upright, would lie within `gap` pixels of
 * a wire's own segment and along it, so that the two could not be told apart.
 */
export function liesOnWire(scene: Scene, a: Point, b: Point, gap: number): boolean {
  const axis = a[1] === b[1] ? 0 : 1;
  const across = axis === 0 ? 1 : 0;
  const [from, to] = [Math.min(a[axis], b[axis]), Math.max(a[axis], b[axis])];
  const area = growBox(
    {
      left: Math.min(a[0], b[0]),
      top: Math.min(a[1], b[1]),
      right: Math.max(a[0], b[0]),
      bottom: Math.max(a[1], b[1]),
    },
    gap,
  );
  return wiresIn(scene, area).some(({ points }) =>
    points.slice(1).some((q, index) => {
      const p = points[index] as Point;
      if (Math.abs(p[across] - a[across]) > gap || Math.abs(q[across] - a[across]) > gap) {
        return false;
      }
      const shared =
        Math.min(to, Math.max(p[axis], q[axis])) - Math.max(from, Math.min(p[axis], q[axis]));
      return shared > gap;
    }),
  );
}
