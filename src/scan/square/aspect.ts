import type { Point } from "../../base/index.ts";
import type { Quad } from "../homography.ts";

/** Width over height of the page that a camera shows as four corners. */
export interface Aspect {
  readonly ratio: number;
  /** Whether the corners told the camera's focal length, or a usual one was taken. */
  readonly focal: "measured" | "assumed";
}

/**
 * Focal length over the picture's diagonal where the corners don't tell: that of the main lenses of
 * phones, about 26 mm on a diagonal of 43.3 mm. Common practice, no source.
 */
const USUAL_FOCAL = 0.6;
const PLAUSIBLE_FOCAL = [0.35, 3] as const;
/** A pixel of error at a corner must not change the ratio by more than this share. */
const STEADY = 0.02;

/**
 * The page's aspect from its corners, the camera's axis in the middle of the picture: two pairs of
 * parallel edges, at right angles in space, give focal length and ratio (Z. Zhang and L.-W. He,
 * "Whiteboard scanning and image enhancement", Digital Signal Processing 17(2), 2007, section 3.2). Tilted
 * about one axis only, or hardly, the page hides the focal length: then a usual one is taken, which
 * matters the less the less it is tilted.
 */
export function aspectOf(corners: Quad, width: number, height: number): Aspect {
  const middle: Point = [(width - 1) / 2, (height - 1) / 2];
  const diagonal = Math.max(1, Math.hypot(width, height));
  const measured = measuredRatio(corners, middle, diagonal);
  if (measured !== null && isSteady(corners, middle, diagonal, measured)) {
    return { ratio: measured, focal: "measured" };
  }
  const edges = edgesOf(corners, middle);
  const ratio = edges ? ratioAt(edges, (USUAL_FOCAL * diagonal) ** 2) : 1;
  return { ratio: Number.isFinite(ratio) && ratio > 0 ? ratio : 1, focal: "assumed" };
}

type Vector = readonly [x: number, y: number, z: number];

interface Edges {
  readonly across: Vector;
  readonly down: Vector;
}

function measuredRatio(corners: Quad, middle: Point, diagonal: number): number | null {
  const edges = edgesOf(corners, middle);
  if (!edges) return null;
  const { across, down } = edges;
  const squared = -(across[0] * down[0] + across[1] * down[1]) / (across[2] * down[2]);
  const focal = Math.sqrt(squared) / diagonal;
  if (!(focal >= PLAUSIBLE_FOCAL[0] && focal <= PLAUSIBLE_FOCAL[1])) return null;
  return ratioAt(edges, squared);
}

/** Whether the ratio stays nearly the same when each corner is moved a pixel each way. */
function isSteady(corners: Quad, middle: Point, diagonal: number, ratio: number): boolean {
  return corners.every((_, moved) =>
    [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ].every(([dx, dy]) => {
      const others = corners.map(([x, y], at) =>
        at === moved ? [x + (dx ?? 0), y + (dy ?? 0)] : [x, y],
      ) as unknown as Quad;
      const other = measuredRatio(others, middle, diagonal);
      return other !== null && Math.abs(other / ratio - 1) <= STEADY;
    }),
  );
}

/** Directions of the page's upper and left edge in space, but for the focal length in their z. */
function edgesOf(corners: Quad, middle: Point): Edges | null {
  const [m1, m2, m4, m3] = corners.map(
    ([x, y]): Vector => [x - middle[0], y - middle[1], 1],
  ) as unknown as readonly [Vector, Vector, Vector, Vector];
  const diagonal = cross(m1, m4);
  const k2 = dot(diagonal, m3) / dot(cross(m2, m4), m3);
  const k3 = dot(diagonal, m2) / dot(cross(m3, m4), m2);
  if (!Number.isFinite(k2) || !Number.isFinite(k3)) return null;
  const edge = (k: number, [x, y]: Vector): Vector => [k * x - m1[0], k * y - m1[1], k - 1];
  return { across: edge(k2, m2), down: edge(k3, m3) };
}

function ratioAt({ across, down }: Edges, focalSquared: number): number {
  const long = ([x, y, z]: Vector) => (x * x + y * y) / focalSquared + z * z;
  return Math.sqrt(long(across) / long(down));
}

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
