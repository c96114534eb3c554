import { type Box, boundsOf, boxesOverlap, type Point } from "../../base/index.ts";
import type { Id, Job, Part, PinRef, Wire } from "../../job/index.ts";
import { splitRef } from "../../job/index.ts";
import { type PartShape, type PinSpot, shapeOf } from "./part-shape.ts";
import { type SpatialGrid, spatialGrid } from "./spatial-grid.ts";

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
  const points: Point[] = [endPoint(from, wire.from), ...(wire.path ?? []), endPoint(to, wire.to)];
  const box = boundsOf(points) ?? from.box;
  const shape = { wire, points, box };
  wireShapes.set(wire, { from: from.part, to: to.part, shape });
  return shape;
}

/** The scene of one sheet; the same object as long as the diagram is the same object. */
export function sceneOf(diagram: Diagram, sheet: Id): Scene {
  let bySheet = scenes.get(diagram);
  if (!bySheet) {
    bySheet = new Map();
    scenes.set(diagram, bySheet);
  }
  let scene = bySheet.get(sheet);
  if (!scene) {
    scene = buildScene(diagram, sheet);
    bySheet.set(sheet, scene);
  }
  return scene;
}

function buildScene(diagram: Diagram, sheet: Id): Scene {
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
  const corners = [...parts, ...wires].flatMap(({ box }): Point[] => [
    [box.left, box.top],
    [box.right, box.bottom],
  ]);
  return {
    sheet,
    parts,
    wires,
    partById,
    wireById: new Map(wires.map((shape) => [shape.wire.id, shape])),
    pins: new Map(parts.flatMap(({ pins }) => pins.map((spot) => [spot.ref, spot]))),
    degree,
    bounds: boundsOf(corners),
    partGrid: spatialGrid(
      parts.map(({ box }) => box),
      CELL,
    ),
    wireGrid: spatialGrid(
      wires.map(({ box }) => box),
      CELL,
    ),
  };
}

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
