import type { Part, PartOf, Position } from "../../../../job/index.ts";
import { type PartShape, shapeOf } from "../../../../session/index.ts";

const standing = new WeakMap<Part, Map<Position, PartShape>>();

/** A switch's symbol with its contacts as they stand in a position. */
export function switchStanding(part: PartOf<"switch">, position: Position): PartShape {
  const shapes = standing.get(part) ?? new Map<Position, PartShape>();
  standing.set(part, shapes);
  let shape = shapes.get(position);
  if (!shape) {
    shape = shapeOf({ ...part, rest: position });
    shapes.set(position, shape);
  }
  return shape;
}
