import { type Box, boundsOf, distance, type Point } from "../base/index.ts";
import type { Cavity, Plug, PlugKey, PlugOutline } from "../job/index.ts";
import { outlineBox, spacingOf } from "./outline.ts";

export type Side = Plug["side"];

export const otherSide = (side: Side): Side => (side === "mating" ? "wire" : "mating");

/** A cavity as it is seen; `index` is its place in the stored list, which marks may not tell apart. */
export interface SeenCavity {
  readonly index: number;
  readonly cavity: Cavity;
  readonly mark: string;
  readonly at: Point;
}

/** The photo behind the cavities; the picture itself is mirrored where the view is. */
export interface SeenPhoto {
  readonly file: string;
  /** Top left of where it lies in the view, millimetres. */
  readonly at: Point;
  readonly width: number;
  readonly height: number;
}

/** A plug's face as seen from one side, millimetres. */
export interface FaceView {
  readonly side: Side;
  /** Whether this is the other side than the one it was drawn from. */
  readonly mirrored: boolean;
  readonly cavities: readonly SeenCavity[];
  readonly outline: PlugOutline | null;
  readonly keys: readonly PlugKey[];
  readonly photo: SeenPhoto | null;
  readonly bounds: Box;
}

/** The upright line that the face is turned over about: the middle of its housing, x in millimetres. */
export function mirrorAxis(plug: Plug): number {
  const box = plug.outline
    ? outlineBox(plug.outline)
    : boundsOf(plug.cavities.map((cavity) => cavity.at));
  return box ? (box.left + box.right) / 2 : 0;
}

/**
 * From stored millimetres to those seen from `side`, and back again: turning over twice changes
 * nothing, so one function serves for both ways.
 */
export function mirrorPoint(plug: Plug, side: Side): (point: Point) => Point {
  if (side === plug.side) return (point) => point;
  const axis = mirrorAxis(plug);
  return ([x, y]) => [2 * axis - x, y];
}

/** The whole face as seen from `side`. Stored points stay as they are. */
export function viewFrom(plug: Plug, side: Side): FaceView {
  const seen = mirrorPoint(plug, side);
  const mirrored = side !== plug.side;
  const cavities = plug.cavities.map((cavity, index) => ({
    index,
    cavity,
    mark: cavity.mark,
    at: seen(cavity.at),
  }));
  const outline = plug.outline ? seenOutline(plug.outline, seen, mirrored) : null;
  const keys = (plug.keys ?? []).map((key) => seenKey(key, seen, mirrored));
  const photo = plug.photo ? seenPhoto(plug.photo, seen, mirrored) : null;
  const bounds = faceBounds(cavities, outline, keys, photo);
  return { side, mirrored, cavities, outline, keys, photo, bounds };
}

/**
 * The mating face of the half that this one is plugged into: each of its cavities meets the one of
 * the same mark, so it lies as this half does seen from the wires. The photo is not its own.
 */
export function otherHalfOf(plug: Plug): FaceView {
  const { photo: _, ...bare } = plug;
  return { ...viewFrom(bare, "wire"), side: "mating" };
}

function seenPhoto(
  photo: NonNullable<Plug["photo"]>,
  seen: (point: Point) => Point,
  mirrored: boolean,
): SeenPhoto {
  const width = photo.width * photo.mmPerPixel;
  const height = photo.height * photo.mmPerPixel;
  const [x, y] = seen(photo.at);
  return { file: photo.file, at: [mirrored ? x - width : x, y], width, height };
}

function seenOutline(
  outline: PlugOutline,
  seen: (point: Point) => Point,
  mirrored: boolean,
): PlugOutline {
  switch (outline.shape) {
    case "rectangle": {
      const [x, y] = seen(outline.at);
      return { ...outline, at: [mirrored ? x - outline.width : x, y] };
    }
    case "circle":
      return { ...outline, at: [...seen(outline.at)] };
    case "polygon":
      return { ...outline, points: outline.points.map((point) => [...seen(point)]) };
  }
}

function seenKey(key: PlugKey, seen: (point: Point) => Point, mirrored: boolean): PlugKey {
  const turn = key.turn ?? 0;
  return { ...key, at: [...seen(key.at)], turn: mirrored ? (360 - turn) % 360 : turn };
}

function faceBounds(
  cavities: readonly SeenCavity[],
  outline: PlugOutline | null,
  keys: readonly PlugKey[],
  photo: SeenPhoto | null,
): Box {
  const points = cavities.map((cavity) => cavity.at);
  if (outline) {
    const box = outlineBox(outline);
    points.push([box.left, box.top], [box.right, box.bottom]);
  } else {
    const reach = spacingOf(cavities) * 0.8;
    for (const { at } of cavities) {
      points.push([at[0] - reach, at[1] - reach], [at[0] + reach, at[1] + reach]);
    }
  }
  for (const { at, width, height } of keys) {
    const reach = Math.max(width, height) / 2;
    points.push([at[0] - reach, at[1] - reach], [at[0] + reach, at[1] + reach]);
  }
  if (photo) {
    const [x, y] = photo.at;
    points.push([x, y], [x + photo.width, y + photo.height]);
  }
  return boundsOf(points) ?? { left: -10, top: -10, right: 10, bottom: 10 };
}

/** The cavity whose middle is nearest to a point, no further than `reach` millimetres. */
export function cavityAt(view: FaceView, point: Point, reach: number): SeenCavity | null {
  let nearest: SeenCavity | null = null;
  let least = reach;
  for (const cavity of view.cavities) {
    const apart = distance(cavity.at, point);
    if (apart <= least) {
      nearest = cavity;
      least = apart;
    }
  }
  return nearest;
}

export type Direction = "left" | "right" | "up" | "down";

const STEPS: Readonly<Record<Direction, Point>> = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, -1],
  down: [0, 1],
};

/**
 * The cavity that an arrow key leads to from `from`: the nearest one in that direction, where a
 * millimetre to the side counts as two ahead. Null at the edge of the face.
 */
export function cavityBeyond(
  view: FaceView,
  from: SeenCavity,
  direction: Direction,
): SeenCavity | null {
  const [dx, dy] = STEPS[direction];
  let best: SeenCavity | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const cavity of view.cavities) {
    const x = cavity.at[0] - from.at[0];
    const y = cavity.at[1] - from.at[1];
    const ahead = x * dx + y * dy;
    const aside = Math.abs(x * dy) + Math.abs(y * dx);
    const cost = ahead + 2 * aside;
    if (ahead > 1e-6 && ahead >= aside / 2 && cost < least) {
      best = cavity;
      least = cost;
    }
  }
  return best;
}
