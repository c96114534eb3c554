import { type Box, type Point, turn } from "../../base/index.ts";
import { apply, type Homography, homographyBetween, type Quad } from "../homography.ts";
import { aspectOf } from "./aspect.ts";
import { type Bow, bowed, straightened } from "./bow.ts";

/**
 * How a picture is squared up, as data: the original is kept and squared anew when this changes. The
 * middle of a picture's first pixel is [0, 0]. Applied in the order of the fields.
 */
export interface Squaring {
  readonly bow: Bow | null;
  /** Corners in the picture of what becomes the whole; null leaves the picture's own. */
  readonly corners: Quad | null;
  /** Pixels shown beyond the corners, so that a frame is not cut. */
  readonly margin: number;
  /** Degrees clockwise that the page is turned to lie straight; see `levelOf`. */
  readonly level: number;
  /** Quarter turns clockwise. */
  readonly quarters: 0 | 1 | 2 | 3;
  /** Left and right swapped, after turning. */
  readonly isMirrored: boolean;
  /** What is kept of the result so far, in its pixels, edges inside; null for all. */
  readonly crop: Box | null;
}

export const NOT_SQUARED: Squaring = {
  bow: null,
  corners: null,
  margin: 0,
  level: 0,
  quarters: 0,
  isMirrored: false,
  crop: null,
};

/** A squaring worked out for a picture: the result's size and where its pixels come from. */
export interface SquaringPlan {
  readonly width: number;
  readonly height: number;
  /** From pixels of the result to those of the picture without its bow. */
  readonly toStraight: Homography;
  readonly bow: Bow | null;
}

/** No larger result is made: what a tablet holds. */
const MOST_PIXELS = 40_000_000;
const MOST_SIDE = 16_384;

/** The largest picture that a job can hold, with a margin: a job file may ask for one of any size. */
const MOST_SHOWN = 150_000_000;

/** Null where the corners are no page: three on a line, or crossed; or where the result is too large. */
export function planOf(
  squaring: Squaring,
  { width, height }: { readonly width: number; readonly height: number },
): SquaringPlan | null {
  const { bow, corners, level, quarters, isMirrored, crop } = squaring;
  // Rows of a part of a pixel would lie askew: a job file may ask for any margin.
  const margin = Math.round(squaring.margin);
  const own = rectangle(-0.5, -0.5, width - 0.5, height - 0.5);
  // A bow without corners keeps the picture's size: what a barrel squeezed into its corners is lost.
  const seen = corners ?? own;
  const straight = (bow && corners ? seen.map((p) => straightened(bow, p)) : seen) as Quad;
  if (!isConvex(straight)) return null;
  const page = corners ? sizeFor(straight, width, height) : { width, height };
  const toStraight = homographyBetween(
    rectangle(-0.5, -0.5, page.width - 0.5, page.height - 0.5),
    straight,
  );
  if (!toStraight) return null;
  const whole = { width: page.width + 2 * margin, height: page.height + 2 * margin };
  const turned = quarters % 2 === 0 ? whole : { width: whole.height, height: whole.width };
  const kept = clipped(crop, turned.width, turned.height);
  const back = ([x, y]: Point): Point => {
    const [cx, cy] = [(turned.width - 1) / 2, (turned.height - 1) / 2];
    const across = x + kept.left - cx;
    const unturned = turn([isMirrored ? -across : across, y + kept.top - cy], -90 * quarters);
    const [px, py] = turn(unturned, -level);
    return apply(toStraight, [px + (page.width - 1) / 2, py + (page.height - 1) / 2]);
  };
  const result = rectangle(-0.5, -0.5, kept.width - 0.5, kept.height - 0.5);
  const all = homographyBetween(result, result.map(back) as unknown as Quad);
  if (!all?.every(Number.isFinite) || kept.width * kept.height > MOST_SHOWN) return null;
  return { width: kept.width, height: kept.height, toStraight: all, bow };
}

/** Where a point of the result lies in the picture. */
export function toPicture({ toStraight, bow }: SquaringPlan, point: Point): Point {
  const straight = apply(toStraight, point);
  return bow ? bowed(bow, straight) : straight;
}

/** Where a point of the picture is found in the result; null beyond the page's horizon. */
export function toResult({ toStraight, bow }: SquaringPlan, point: Point): Point | null {
  const [a, b, c, d, e, f, g, h] = toStraight;
  const [x, y] = bow ? straightened(bow, point) : point;
  // The inverse of a homography is its adjugate, but for a factor.
  const w = x * (d * h - e * g) + y * (b * g - a * h) + (a * e - b * d);
  const determinant = a * (e - f * h) - b * (d - f * g) + c * (d * h - e * g);
  if (!(w * determinant > 0)) return null;
  return [
    (x * (e - f * h) + y * (c * h - b) + (b * f - c * e)) / w,
    (x * (f * g - d) + y * (a - c * g) + (c * d - a * f)) / w,
  ];
}

/** Degrees that a page must be turned so that the line from a to b lies level or upright, the nearer. */
export function levelOf(a: Point, b: Point): number {
  const angle = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  const level = Math.round(angle / 90) * 90 - angle;
  return level === 0 ? 0 : level;
}

/** Size of the page that four corners show: no side loses a pixel, the ratio is the page's own. */
export function sizeFor(corners: Quad, width: number, height: number) {
  const side = (from: number, to: number) => {
    const [a, b] = [corners[from] as Point, corners[to] as Point];
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  };
  const [across, down] = [Math.max(side(0, 1), side(3, 2)), Math.max(side(0, 3), side(1, 2))];
  const { ratio } = aspectOf(corners, width, height);
  let [wide, high] = across / down < ratio ? [down * ratio, down] : [across, across / ratio];
  const shrink = Math.min(
    1,
    Math.sqrt(MOST_PIXELS / (wide * high)),
    MOST_SIDE / Math.max(wide, high),
  );
  [wide, high] = [wide * shrink, high * shrink];
  return { width: Math.max(1, Math.round(wide)), height: Math.max(1, Math.round(high)) };
}

const rectangle = (left: number, top: number, right: number, bottom: number): Quad => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];

/** Clockwise as the reader sees it, without a corner that points inwards. */
export function isConvex(quad: Quad): boolean {
  return quad.every((a, at) => {
    const [b, c] = [quad[(at + 1) % 4] as Point, quad[(at + 2) % 4] as Point];
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) > 0;
  });
}

function clipped(crop: Box | null, width: number, height: number) {
  if (!crop) return { left: 0, top: 0, width, height };
  const left = Math.max(0, Math.min(width - 1, Math.round(crop.left)));
  const top = Math.max(0, Math.min(height - 1, Math.round(crop.top)));
  const right = Math.max(left, Math.min(width - 1, Math.round(crop.right)));
  const bottom = Math.max(top, Math.min(height - 1, Math.round(crop.bottom)));
  return { left, top, width: right - left + 1, height: bottom - top + 1 };
}
