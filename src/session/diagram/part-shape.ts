import { type Box, boundsOf, boxAt, type Point, scale, subtract, turn } from "../../base/index.ts";
import { DEFAULT_UNIT, pinsOf, type Stroke, strokesOf, toSheet } from "../../circuit/index.ts";
import { type Part, type PinId, type PinRef, pinRef } from "../../job/index.ts";

/** A pin as it lies on its sheet. */
export interface PinSpot {
  readonly pin: PinId;
  readonly ref: PinRef;
  /** Pixels of the sheet. */
  readonly at: Point;
  /** Unit vector along which a wire leaves the symbol; null where any way is as good. */
  readonly out: Point | null;
}

/** A part as it lies on its sheet, worked out once per part object. */
export interface PartShape {
  readonly part: Part;
  readonly strokes: readonly Stroke[];
  /** Around strokes and pins, in symbol units before the turn. */
  readonly local: Box;
  /** Around the turned part, pixels of the sheet. */
  readonly box: Box;
  readonly pins: readonly PinSpot[];
}

const shapes = new WeakMap<Part, PartShape>();

/** Pixels of the sheet per symbol unit. */
export const unitOf = (part: Part): number => part.unit ?? DEFAULT_UNIT;

/** Where, in symbol units of `part` before its turn, a point of the sheet lies. */
export function toSymbol(part: Part, at: Point): Point {
  return scale(turn(subtract(at, part.at), -part.turn), 1 / unitOf(part));
}

const cornersOf = ({ left, top, right, bottom }: Box): Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];

function strokePoints(stroke: Stroke): readonly Point[] {
  if (stroke.draw === "line") return stroke.points;
  if (stroke.draw === "text") return [];
  const { at, radius } = stroke;
  return cornersOf(boxAt(at, radius));
}

/** A pin counts as lying on a side when it is this near to it, symbol units. */
const ON_SIDE = 0.6;

function outward(at: Point, { left, top, right, bottom }: Box): Point | null {
  const sides: readonly [number, Point][] = [
    [at[0] - left, [-1, 0]],
    [right - at[0], [1, 0]],
    [at[1] - top, [0, -1]],
    [bottom - at[1], [0, 1]],
  ];
  const near = sides.filter(([gap]) => gap < ON_SIDE).sort((a, b) => a[0] - b[0]);
  const nearest = near[0];
  if (!nearest) return null;
  // On a corner, or inside something no larger than a dot, no side is the pin's own.
  const rival = near[1];
  if (rival && rival[0] - nearest[0] < 1e-6) return null;
  return nearest[1];
}

export function shapeOf(part: Part): PartShape {
  const known = shapes.get(part);
  if (known) return known;
  const strokes = strokesOf(part);
  const places = pinsOf(part);
  const local = boundsOf([
    ...strokes.flatMap(strokePoints),
    ...places.map((place) => place.at),
  ]) ?? { left: 0, top: 0, right: 0, bottom: 0 };
  const box = boundsOf(cornersOf(local).map((corner) => toSheet(part, corner))) ?? local;
  const shape: PartShape = {
    part,
    strokes,
    local,
    box,
    pins: places.map(({ id, at }) => {
      const out = outward(at, local);
      return {
        pin: id,
        ref: pinRef(part.id, id),
        at: toSheet(part, at),
        out: out && roundVector(turn(out, part.turn)),
      };
    }),
  };
  shapes.set(part, shape);
  return shape;
}

/** The nearest of the four ways of the sheet: a wire leaves along it whatever the part's turn. */
function roundVector([x, y]: Point): Point {
  return Math.abs(x) >= Math.abs(y) ? [Math.sign(x), 0] : [0, Math.sign(y)];
}
