import {
  type Box,
  boundsOf,
  boxesOverlap,
  type Point,
  type SpatialGrid,
  spatialGrid,
} from "../../base/index.ts";
import type { Id, Job, Part, PinRef, Wire } from "../../job/index.ts";
import { splitRef } from "../../job/index.ts";
import { type PartShape, type PinSpot, shapeOf } from "./part-shape.ts";

/** A wire as it lies on its sheet. */
export interface WireShape {
  readonly wire: Wire;
  /** From one end through the corners to the other, pixels of the sheet; at least two. */
  readonly points: readonly Point[];
  readonly box: Box;
}

/** Everything drawn on one sheet, with its places worked out and sorted for quick look-up. */
export interface Scene {
  readonly sheet: Id;
  readonly parts: readonly PartShape[];
  readonly wires: readonly WireShape[];
  readonly partById: ReadonlyMap<Id, PartShape>;
  readonly wireById: ReadonlyMap<Id, WireShape>;
  readonly pins: ReadonlyMap<PinRef, PinSpot>;
  /** How many wires end on a pin. */
  readonly degree: ReadonlyMap<PinRef, number>;
  readonly bounds: Box | null;
  readonly partGrid: SpatialGrid;
  readonly wireGrid: SpatialGrid;
}

type Diagram = Job["diagram"];

const CELL = 160;
const scenes = new WeakMap<Diagram, Map<Id, Scene>>();
const wireShapes = new WeakMap<Wire, { from: Part; to: Part; shape: WireShape }>();

/** Where an end of a wire lies: at its pin, or at the part's middle when the part has no such pin. */
function endPoint(shape: PartShape, ref: PinRef): Point {
  return shape.pins.find((spot) => spot.ref === ref)?.at ?? shape.part.at;
}

function wireShape(wire: Wire, from: PartShape, to: PartShape): WireShape {
  const known = wireShapes.get(wire);
  if (known && known.from === from.part && known.to === to.part) return known.shape;
  const [start, end] = [endPoint(from, wire.from), endPoint(to, wire.to)];
  // Another word beside its part is no reason to lay it anew.
  const shape =
    known && isAt(known.shape.points[0], start) && isAt(known.shape.points.at(-1), end)
      ? known.shape
      : laid(wire, [start, ...(wire.path ?? []), end], from.box);
  wireShapes.set(wire, { from: from.part, to: to.part, shape });
  return shape;
}

const isAt = (a: Point | undefined, b: Point) => a?.[0] === b[0] && a[1] === b[1];

const laid = (wire: Wire, points: readonly Point[], otherwise: Box): WireShape => ({
  wire,
  points,
  box: boundsOf(points) ?? otherwise,
});

/** The scene made last: most edits change little of the one before. */
let last: { readonly diagram: Diagram; readonly scene: Scene } | null = null;

/** The scene of one sheet; the same object as long as the diagram is the same object. */
export function sceneOf(diagram: Diagram, sheet: Id): Scene {
  let bySheet = scenes.get(diagram);
  if (!bySheet) {
    bySheet = new Map();
    scenes.set(diagram, bySheet);
  }
  let scene = bySheet.get(sheet);
  if (!scene) {
    const before = last?.scene.sheet === sheet ? last : null;
    scene = (before && sceneAfter(before.scene, before.diagram, diagram)) ?? build(diagram, sheet);
    bySheet.set(sheet, scene);
  }
  last = { diagram, scene };
  return scene;
}

function build(diagram: Diagram, sheet: Id): Scene {
  const parts = diagram.parts.filter((part) => part.sheet === sheet).map(shapeOf);
  const partById = new Map(parts.map((shape) => [shape.part.id, shape]));
  const wires: WireShape[] = [];
  const degree = new Map<PinRef, number>();
  for (const wire of diagram.wires) {
    for (const ref of [wire.from, wire.to]) degree.set(ref, (degree.get(ref) ?? 0) + 1);
    const from = partById.get(splitRef(wire.from).owner);
    const to = partById.get(splitRef(wire.to).owner);
    if (from && to) wires.push(wireShape(wire, from, to));
  }
  return {
    sheet,
    parts,
    wires,
    partById,
    wireById: new Map(wires.map((shape) => [shape.wire.id, shape])),
    pins: new Map(parts.flatMap(({ pins }) => pins.map((spot) => [spot.ref, spot]))),
    degree,
    bounds: boundsAround(parts, wires),
    partGrid: spatialGrid(boxesOf(parts), CELL),
    wireGrid: spatialGrid(boxesOf(wires), CELL),
  };
}

const boxesOf = (shapes: readonly { readonly box: Box }[]) => shapes.map(({ box }) => box);

function boundsAround(...lists: readonly (readonly { readonly box: Box }[])[]): Box | null {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const list of lists) {
    for (const { box } of list) {
      left = Math.min(left, box.left);
      top = Math.min(top, box.top);
      right = Math.max(right, box.right);
      bottom = Math.max(bottom, box.bottom);
    }
  }
  return left <= right ? { left, top, right, bottom } : null;
}

/**
 * The scene after an edit that changed some parts and wires in their places, made of the one before.
 * Null where more than that happened, and it is to be built from nothing.
 */
function sceneAfter(before: Scene, was: Diagram, now: Diagram): Scene | null {
  const parts = replaced(was.parts, now.parts);
  const wires = replaced(was.wires, now.wires);
  if (!parts || !wires) return null;
  for (const [old, part] of parts) if (old.sheet !== part.sheet) return null;
  for (const [old, wire] of wires) if (old.from !== wire.from || old.to !== wire.to) return null;

  const partShapes = withShapes(before.parts, before.partGrid, ({ part }) => {
    const next = parts.get(part);
    return next && shapeOf(next);
  });
  const partById = partShapes.changed.length === 0 ? before.partById : new Map(before.partById);
  for (const [, shape] of partShapes.changed)
    (partById as Map<Id, PartShape>).set(shape.part.id, shape);
  const owners = new Set(partShapes.changed.map(([, { part }]) => part.id));
  const isTouched = ({ from, to }: Wire) =>
    owners.size > 0 && (owners.has(splitRef(from).owner) || owners.has(splitRef(to).owner));
  const wireShapesNow = withShapes(before.wires, before.wireGrid, ({ wire }) => {
    const next = wires.get(wire) ?? (isTouched(wire) ? wire : undefined);
    if (!next) return undefined;
    const from = partById.get(splitRef(next.from).owner);
    const to = partById.get(splitRef(next.to).owner);
    return from && to && wireShape(next, from, to);
  });
  const wireById = wireShapesNow.changed.length === 0 ? before.wireById : new Map(before.wireById);
  for (const [, shape] of wireShapesNow.changed)
    (wireById as Map<Id, WireShape>).set(shape.wire.id, shape);
  return {
    sheet: before.sheet,
    parts: partShapes.shapes,
    wires: wireShapesNow.shapes,
    partById,
    wireById,
    pins: pinsAfter(before, partShapes.changed),
    degree: before.degree,
    bounds: boundsAround(partShapes.shapes, wireShapesNow.shapes),
    partGrid: partShapes.grid,
    wireGrid: wireShapesNow.grid,
  };
}

/** Of more than these, all the rest is worked out as quickly. */
const MOST_REPLACED = 1000;

/** What took the place of what, under the same id; null where a list has other members. */
function replaced<T extends { readonly id: Id }>(
  before: readonly T[],
  now: readonly T[],
): ReadonlyMap<T, T> | null {
  const found = new Map<T, T>();
  if (before === now) return found;
  if (before.length !== now.length) return null;
  for (let place = 0; place < now.length; place++) {
    const [old, next] = [before[place] as T, now[place] as T];
    if (old === next) continue;
    if (old.id !== next.id || found.size === MOST_REPLACED) return null;
    found.set(old, next);
  }
  return found;
}

/** The shapes with others in the places of some, and how to find them; the same where none is another. */
function withShapes<S extends { readonly box: Box }>(
  before: readonly S[],
  grid: SpatialGrid,
  next: (shape: S) => S | undefined,
) {
  const changed: (readonly [old: S, now: S])[] = [];
  const moved: number[] = [];
  const now = before.map((old, place) => {
    const shape = next(old) ?? old;
    if (shape === old) return old;
    changed.push([old, shape]);
    const { left, top, right, bottom } = old.box;
    const { box } = shape;
    if (box.left !== left || box.top !== top || box.right !== right || box.bottom !== bottom)
      moved.push(place);
    return shape;
  });
  if (changed.length === 0) return { shapes: before, changed, grid };
  const same = moved.length === 0 ? grid : grid.offering(moved);
  return { shapes: now, changed, grid: same ?? spatialGrid(boxesOf(now), CELL) };
}

function pinsAfter(
  before: Scene,
  changed: readonly (readonly [old: PartShape, now: PartShape])[],
): Scene["pins"] {
  const others = changed.filter(
    ([old, now]) =>
      old.pins.length !== now.pins.length ||
      now.pins.some((spot, place) => {
        const one = old.pins[place];
        return one?.ref !== spot.ref || !isAt(one.at, spot.at) || !isSameWay(one.out, spot.out);
      }),
  );
  if (others.length === 0) return before.pins;
  const pins = new Map(before.pins);
  for (const [old] of others) for (const { ref } of old.pins) pins.delete(ref);
  for (const [, now] of others) for (const spot of now.pins) pins.set(spot.ref, spot);
  return pins;
}

const isSameWay = (a: Point | null, b: Point | null) =>
  a === b || (a !== null && b !== null && isAt(a, b));

/** The parts whose boxes overlap `area`. */
export function partsIn(scene: Scene, area: Box): PartShape[] {
  return scene.partGrid
    .near(area)
    .map((index) => scene.parts[index] as PartShape)
    .filter((shape) => boxesOverlap(shape.box, area));
}

/** The wires whose boxes overlap `area`. */
export function wiresIn(scene: Scene, area: Box): WireShape[] {
  return scene.wireGrid
    .near(area)
    .map((index) => scene.wires[index] as WireShape)
    .filter((shape) => boxesOverlap(shape.box, area));
}

/** Whether a wire runs through a box, which it need not do where the boxes around both overlap. */
export function runsThrough({ points }: WireShape, area: Box): boolean {
  return points.some((b, place) => {
    const a = points[place - 1];
    return a !== undefined && comesInto(a, b, area);
  });
}

/** Whether a straight line from `a` to `b` has a point in the box. */
function comesInto([ax, ay]: Point, [bx, by]: Point, box: Box): boolean {
  if (Math.max(ax, bx) < box.left || Math.min(ax, bx) > box.right) return false;
  if (Math.max(ay, by) < box.top || Math.min(ay, by) > box.bottom) return false;
  // Beside the box unless it has corners on both sides of the line.
  const side = (x: number, y: number) => (bx - ax) * (y - ay) - (by - ay) * (x - ax);
  const sides = [
    side(box.left, box.top),
    side(box.right, box.top),
    side(box.left, box.bottom),
    side(box.right, box.bottom),
  ];
  return Math.min(...sides) <= 0 && Math.max(...sides) >= 0;
}

/** The box around the named parts, wires and pins that lie on the sheet; null when none does. */
export function boundsOfRefs(scene: Scene, refs: Iterable<string>): Box | null {
  const points: Point[] = [];
  for (const ref of refs) {
    const shape = scene.partById.get(ref) ?? scene.wireById.get(ref);
    const spot = scene.pins.get(ref);
    if (shape) {
      points.push([shape.box.left, shape.box.top], [shape.box.right, shape.box.bottom]);
    } else if (spot) points.push(spot.at);
  }
  return boundsOf(points);
}
