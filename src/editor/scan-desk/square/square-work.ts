import type { Box, Point } from "../../../base/index.ts";
import {
  NOT_SQUARED,
  type ProposedCorners,
  planOf,
  type Quad,
  type Squaring,
} from "../../../scan/index.ts";

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Size of the result before anything is cut off; null where the corners are no page. */
export function uncutSize(squaring: Squaring, original: Size): Size | null {
  const plan = planOf({ ...squaring, crop: null }, original);
  return plan && { width: plan.width, height: plan.height };
}

/** Size of the result; null where the corners are no page. */
export function cutSize(squaring: Squaring, original: Size): Size | null {
  const { crop } = squaring;
  const whole = uncutSize(squaring, original);
  if (!whole || !crop) return whole;
  return { width: crop.right - crop.left + 1, height: crop.bottom - crop.top + 1 };
}

/** The page itself is another one: what was kept of it is kept in proportion. */
function reshaped(squaring: Squaring, change: Partial<Squaring>, original: Size): Squaring {
  const next = { ...squaring, ...change };
  const { crop } = squaring;
  const [was, is] = [uncutSize(squaring, original), uncutSize(next, original)];
  if (!crop || !was || !is) return next;
  const [across, down] = [is.width / was.width, is.height / was.height];
  return {
    ...next,
    crop: {
      left: Math.round(crop.left * across),
      right: Math.round(crop.right * across),
      top: Math.round(crop.top * down),
      bottom: Math.round(crop.bottom * down),
    },
  };
}

export const withCorners = (squaring: Squaring, corners: Quad | null, original: Size): Squaring =>
  reshaped(squaring, corners ? { corners } : { corners, margin: 0, bow: null }, original);

export const withBow = (squaring: Squaring, bow: Squaring["bow"], original: Size): Squaring =>
  reshaped(squaring, { bow }, original);

export function withMargin(squaring: Squaring, margin: number): Squaring {
  const by = margin - squaring.margin;
  const { crop } = squaring;
  return {
    ...squaring,
    margin,
    crop: crop && {
      left: crop.left + by,
      right: crop.right + by,
      top: crop.top + by,
      bottom: crop.bottom + by,
    },
  };
}

/** A quarter turn as the user sees it, clockwise for 1; what is kept turns along. */
export function turned(squaring: Squaring, by: 1 | -1, original: Size): Squaring {
  const size = uncutSize(squaring, original);
  const { crop, quarters, isMirrored } = squaring;
  // Mirrored after turning: the other way round there.
  const next = (quarters + (isMirrored ? -by : by) + 4) % 4;
  return {
    ...squaring,
    quarters: next as Squaring["quarters"],
    crop: crop && size && (by === 1 ? clockwise(crop, size.height) : counter(crop, size.width)),
  };
}

const clockwise = (crop: Box, height: number): Box => ({
  left: height - 1 - crop.bottom,
  right: height - 1 - crop.top,
  top: crop.left,
  bottom: crop.right,
});

const counter = (crop: Box, width: number): Box => ({
  left: crop.top,
  right: crop.bottom,
  top: width - 1 - crop.right,
  bottom: width - 1 - crop.left,
});

export function mirrored(squaring: Squaring, original: Size): Squaring {
  const size = uncutSize(squaring, original);
  const { crop, isMirrored } = squaring;
  return {
    ...squaring,
    isMirrored: !isMirrored,
    crop: crop &&
      size && { ...crop, left: size.width - 1 - crop.right, right: size.width - 1 - crop.left },
  };
}

/** The most that a page is turned to lie level: beyond it another side is nearer. */
export const MOST_LEVEL = 45;

/** Turned on by so many degrees clockwise, as the user sees it. */
export function levelled(squaring: Squaring, by: number): Squaring {
  const level = squaring.level + (squaring.isMirrored ? -by : by);
  return { ...squaring, level: Math.max(-MOST_LEVEL, Math.min(MOST_LEVEL, level)) };
}

/** A box smaller than this either way was a slip of the finger. */
const LEAST_CROP = 8;

/** What is kept between two corners of a box; the whole where they are as far apart as it is large. */
export function croppedTo(squaring: Squaring, a: Point, b: Point, original: Size): Squaring {
  const size = uncutSize(squaring, original);
  if (!size) return squaring;
  const within = (value: number, most: number) =>
    Math.round(Math.max(0, Math.min(most - 1, value)));
  const crop = {
    left: within(Math.min(a[0], b[0]), size.width),
    right: within(Math.max(a[0], b[0]), size.width),
    top: within(Math.min(a[1], b[1]), size.height),
    bottom: within(Math.max(a[1], b[1]), size.height),
  };
  if (crop.right - crop.left < LEAST_CROP || crop.bottom - crop.top < LEAST_CROP) return squaring;
  const isWhole =
    crop.left === 0 &&
    crop.top === 0 &&
    crop.right === size.width - 1 &&
    crop.bottom === size.height - 1;
  return { ...squaring, crop: isWhole ? null : crop };
}

/** The corners that are dragged: those set, else those of the picture itself. */
export const cornersShown = (squaring: Squaring, { width, height }: Size): Quad =>
  squaring.corners ?? [
    [0, 0],
    [width - 1, 0],
    [width - 1, height - 1],
    [0, height - 1],
  ];

/** One corner moved, kept on the picture. */
export function withCorner(
  squaring: Squaring,
  corner: number,
  [x, y]: Point,
  original: Size,
): Squaring {
  const at: Point = [
    Math.max(0, Math.min(original.width - 1, x)),
    Math.max(0, Math.min(original.height - 1, y)),
  ];
  const corners = cornersShown(squaring, original).map((one, n) => (n === corner ? at : one));
  return reshaped(squaring, { corners: corners as unknown as Quad }, original);
}

/** Of a frame so much is shown beyond it that its own line stays: a share of the longer side. */
const FRAME_MARGIN = 0.01;

/** The corners that were found, with the lens's bow; what was cut off of another page is not of this. */
export function proposedCorners(
  squaring: Squaring,
  { corners, of, bow }: ProposedCorners,
  { width, height }: Size,
): Squaring {
  const margin = of === "frame" ? Math.round(FRAME_MARGIN * Math.max(width, height)) : 0;
  return { ...squaring, corners, bow, margin, crop: null };
}

export const isNotSquared = (squaring: Squaring): boolean =>
  JSON.stringify(squaring) === JSON.stringify(NOT_SQUARED);
