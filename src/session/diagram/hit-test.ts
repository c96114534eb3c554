import {
  type Box,
  boxAt,
  boxContains,
  boxesOverlap,
  distance,
  growBox,
  type Point,
} from "../../base/index.ts";
import type { Id, PinRef } from "../../job/index.ts";
import { type PartShape, toSymbol, unitOf } from "./part-shape.ts";
import { nearestOnLine, type SpotOnLine } from "./polyline.ts";
import { partsIn, type Scene, type WireShape, wiresIn } from "./scene.ts";

/** What lies under the pointer. */
export type DiagramHit =
  | { readonly on: "pin"; readonly ref: PinRef; readonly part: Id; readonly at: Point }
  | { readonly on: "part"; readonly part: Id }
  | { readonly on: "wire"; readonly wire: Id; readonly spot: SpotOnLine };

/** True when `p` lies in the part's own box, turned with it, or within `slack` pixels of it. */
export function inPart(shape: PartShape, p: Point, slack = 0): boolean {
  return boxContains(growBox(shape.local, slack / unitOf(shape.part)), toSymbol(shape.part, p));
}

/** The pin nearest to `p` within `reach` pixels; null when there is none. */
export function pinAt(
  scene: Scene,
  p: Point,
  reach: number,
): Extract<DiagramHit, { on: "pin" }> | null {
  let best: Extract<DiagramHit, { on: "pin" }> | null = null;
  let nearest = reach;
  for (const shape of partsIn(scene, boxAt(p, reach))) {
    for (const spot of shape.pins) {
      const away = distance(spot.at, p);
      if (away > nearest) continue;
      nearest = away;
      best = { on: "pin", ref: spot.ref, part: shape.part.id, at: spot.at };
    }
  }
  return best;
}

/** The smallest part under `p`: a fuse drawn inside a module's box is what was meant. */
export function partAt(scene: Scene, p: Point, slack: number): PartShape | null {
  let best: PartShape | null = null;
  let smallest = Number.POSITIVE_INFINITY;
  for (const shape of partsIn(scene, boxAt(p, slack))) {
    if (!inPart(shape, p, slack)) continue;
    const { box } = shape;
    const area = (box.right - box.left) * (box.bottom - box.top);
    if (area < smallest) {
      smallest = area;
      best = shape;
    }
  }
  return best;
}

/** The wire nearest to `p` within `reach` pixels; null when there is none. */
export function wireAt(
  scene: Scene,
  p: Point,
  reach: number,
): { shape: WireShape; spot: SpotOnLine } | null {
  let best: { shape: WireShape; spot: SpotOnLine } | null = null;
  for (const shape of wiresIn(scene, boxAt(p, reach))) {
    const spot = nearestOnLine(shape.points, p);
    if (spot && spot.distance <= (best?.spot.distance ?? reach)) best = { shape, spot };
  }
  return best;
}

/** What a pointer at `p` means: pins before small parts before wires before large parts. */
export function hitAt(scene: Scene, p: Point, reach: number): DiagramHit | null {
  const pin = pinAt(scene, p, reach);
  if (pin) return pin;
  const part = partAt(scene, p, reach / 2);
  const wire = wireAt(scene, p, reach);
  // Lines that run across a module's box would otherwise be out of reach.
  if (wire && (!part || wire.spot.distance < reach / 2)) {
    return { on: "wire", wire: wire.shape.wire.id, spot: wire.spot };
  }
  return part ? { on: "part", part: part.part.id } : null;
}

/** Parts and wires that a box drawn by the user takes: parts and wires wholly inside it. */
export function idsInside(scene: Scene, area: Box): Id[] {
  const inside = (box: Box) =>
    box.left >= area.left &&
    box.right <= area.right &&
    box.top >= area.top &&
    box.bottom <= area.bottom;
  return [
    ...partsIn(scene, area)
      .filter((shape) => inside(shape.box))
      .map((shape) => shape.part.id),
    ...wiresIn(scene, area)
      .filter((shape) => boxesOverlap(shape.box, area) && inside(shape.box))
      .map((shape) => shape.wire.id),
  ];
}
