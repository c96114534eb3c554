import { type Box, boundsOf, boxAt, distance, type Point } from "../base/index.ts";
import type { PlugKey, PlugOutline } from "../job/index.ts";

export type Edge = "top" | "right" | "bottom" | "left";

/** Millimetres assumed between neighbours on a face with a single cavity. */
const LONE_SPACING = 6;
/** The room that a face without any cavity yet offers for them, millimetres. */
const BARE_FACE: Box = { left: -15, top: -8, right: 15, bottom: 8 };

interface Placed {
  readonly at: Point;
}

/** The least distance between the middles of two cavities, millimetres: how large each may be drawn. */
export function spacingOf(cavities: readonly Placed[]): number {
  const points = cavities.map((cavity) => cavity.at).sort((a, b) => a[0] - b[0]);
  let least = Number.POSITIVE_INFINITY;
  for (const [index, a] of points.entries()) {
    for (let next = index + 1; next < points.length; next++) {
      const b = points[next];
      if (!b || b[0] - a[0] >= least) break;
      const apart = distance(a, b);
      if (apart > 0) least = Math.min(least, apart);
    }
  }
  return Number.isFinite(least) ? least : LONE_SPACING;
}

/** A housing around the cavities, a little under one spacing away from them. */
export function outlineAround(
  cavities: readonly Placed[],
  shape: "rectangle" | "circle",
): PlugOutline {
  const margin = spacingOf(cavities) * 0.8;
  const points = cavities.map((cavity) => cavity.at);
  const box = boundsOf(points) ?? BARE_FACE;
  if (shape === "circle") {
    const middle: Point = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
    const reach = points.length === 0 ? BARE_FACE.right : furthest(points, middle);
    return { shape: "circle", at: [...middle], radius: reach + margin };
  }
  return {
    shape: "rectangle",
    at: [box.left - margin, box.top - margin],
    width: box.right - box.left + 2 * margin,
    height: box.bottom - box.top + 2 * margin,
    radius: margin / 2,
  };
}

const furthest = (points: readonly Point[], from: Point) =>
  points.reduce((most, point) => Math.max(most, distance(point, from)), 0);

/** The box that an outline fills. */
export function outlineBox(outline: PlugOutline): Box {
  switch (outline.shape) {
    case "rectangle": {
      const [left, top] = outline.at;
      return { left, top, right: left + outline.width, bottom: top + outline.height };
    }
    case "circle":
      return boxAt(outline.at, outline.radius);
    case "polygon":
      return boundsOf(outline.points) ?? { left: 0, top: 0, right: 0, bottom: 0 };
  }
}

/** A latch stands out from the middle of an edge of the housing; a key cuts into it. */
export function keyOn(outline: PlugOutline, kind: PlugKey["kind"], edge: Edge): PlugKey {
  const { left, top, right, bottom } = outlineBox(outline);
  const middle: Point = [(left + right) / 2, (top + bottom) / 2];
  const lesser = Math.min(right - left, bottom - top);
  const width = lesser * (kind === "latch" ? 0.4 : 0.14);
  const height = lesser * (kind === "latch" ? 0.16 : 0.1);
  const out = kind === "latch" ? height / 2 : -height / 2;
  const at: Record<Edge, Point> = {
    top: [middle[0], top - out],
    right: [right + out, middle[1]],
    bottom: [middle[0], bottom + out],
    left: [left - out, middle[1]],
  };
  const turn: Record<Edge, number> = { top: 0, right: 90, bottom: 180, left: 270 };
  return { kind, at: [...at[edge]], width, height, turn: turn[edge] };
}

/** The edge of the housing that a latch or key sits at. */
export function edgeOf(outline: PlugOutline, key: PlugKey): Edge {
  const { left, top, right, bottom } = outlineBox(outline);
  const away: readonly [Edge, number][] = [
    ["top", Math.abs(key.at[1] - top)],
    ["right", Math.abs(key.at[0] - right)],
    ["bottom", Math.abs(key.at[1] - bottom)],
    ["left", Math.abs(key.at[0] - left)],
  ];
  return away.reduce((near, next) => (next[1] < near[1] ? next : near))[0];
}
