import { type Box, distance, growBox, type Point } from "../../base/index.ts";
import type { Id } from "../../job/index.ts";
import { type Scene, type WireShape, wiresIn } from "./scene.ts";
import { spatialGrid } from "./spatial-grid.ts";

/** A spot where a wire passes another without touching it. */
export interface Crossing {
  readonly segment: number;
  /** Pixels from the segment's first point. */
  readonly along: number;
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

/** Those found last: most edits leave every wire where it was. */
let last: { wires: readonly WireShape[]; crossings: ReadonlyMap<Id, readonly Crossing[]> } | null =
  null;

/**
 * For each wire that has to hop, where it hops over others: sorted along the wire. Of two wires
 * that cross, the flatter segment hops.
 */
export function crossingsOf(scene: Scene): ReadonlyMap<Id, readonly Crossing[]> {
  let crossings = found.get(scene);
  if (!crossings) {
    const { wires } = scene;
    crossings = last && lieAlike(last.wires, wires) ? last.crossings : findCrossings(wires);
    last = { wires, crossings };
    found.set(scene, crossings);
  }
  return crossings;
}

/** Whether the same wires run over the same points. */
const lieAlike = (before: readonly WireShape[], now: readonly WireShape[]): boolean =>
  before.length === now.length &&
  before.every((one, index) => {
    const other = now[index] as WireShape;
    return (
      one === other ||
      (one.wire.id === other.wire.id &&
        one.points.length === other.points.length &&
        one.points.every(([x, y], place) => {
          const at = other.points[place] as Point;
          return x === at[0] && y === at[1];
        }))
    );
  });

export function findCrossings(wires: readonly WireShape[]): Map<Id, Crossing[]> {
  const segments: Segment[] = wires.flatMap((wire) =>
    wire.points.slice(1).map((b, index) => ({ wire, index, a: wire.points[index] as Point, b })),
  );
  const boxes = segments.map(boxOf);
  const grid = spatialGrid(boxes, 200);
  const hops = new Map<Id, Crossing[]>();
  segments.forEach((one, index) => {
    for (const other of grid.near(boxes[index] as Box)) {
      if (other <= index) continue;
      const two = segments[other] as Segment;
      const at = cross(one, two);
      if (!at) continue;
      const hopper = steepness(one) <= steepness(two) ? one : two;
      const list = hops.get(hopper.wire.wire.id) ?? [];
      list.push({ segment: hopper.index, along: distance(hopper.a, at) });
      hops.set(hopper.wire.wire.id, list);
    }
  });
  for (const list of hops.values()) {
    list.sort((a, b) => a.segment - b.segment || a.along - b.along);
  }
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
