import { type Box, growBox, type Point } from "../../../base/index.ts";

/** How millimetres of the face come onto the board: `px = mm * scale + offset`. */
export interface Camera {
  /** Pixels per millimetre. */
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/**
 * What the board shows until the user moves it: see `startCamera`; or the whole face as asked for,
 * close up to the edges of a small view.
 */
export type Framing = "start" | "whole" | "close" | Camera;

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room kept free around the face: the words over it, codes that stand out of the housing. */
const MARGIN = { top: 52, side: 20, bottom: 24 };
/** Where no words lie over it and nothing stands out of it. */
const SLIGHT_MARGIN = { top: 8, side: 10, bottom: 12 };
/** Neighbouring cavities are drawn no further apart than this when everything is shown. */
const WIDEST_SPACING = 150;
/** Any closer, and neither a finger nor a colour code finds room between two cavities. */
const NARROWEST_SPACING = 52;
const SMALLEST_SCALE = 0.5;
const LARGEST_SCALE = 80;

export const toBoard = (camera: Camera, [x, y]: Point): Point => [
  x * camera.scale + camera.x,
  y * camera.scale + camera.y,
];

export const toFace = (camera: Camera, [x, y]: Point): Point => [
  (x - camera.x) / camera.scale,
  (y - camera.y) / camera.scale,
];

/** Shows all of `bounds` as large as the board allows. */
export function fitCamera(
  bounds: Box,
  size: Size,
  spacing: number,
  room: "ample" | "slight" = "ample",
): Camera {
  const margin = room === "slight" ? SLIGHT_MARGIN : MARGIN;
  const { width, height } = roomOf(size, margin);
  const scale = Math.min(
    width / (bounds.right - bounds.left),
    height / (bounds.bottom - bounds.top),
    WIDEST_SPACING / spacing,
    LARGEST_SCALE,
  );
  return centredOn(bounds, size, scale, margin);
}

/**
 * The whole face where that leaves every cavity large enough for a finger and its code; else as
 * much of it as fits, beginning at its first row and column.
 */
export function startCamera(
  bounds: Box,
  cavities: Box | null,
  size: Size,
  spacing: number,
): Camera {
  const whole = fitCamera(bounds, size, spacing);
  const scale = NARROWEST_SPACING / spacing;
  if (whole.scale >= scale || !cavities) return whole;
  const room = roomOf(size);
  const reach = spacing * 0.8;
  const box = growBox(cavities, reach);
  const centre = centredOn(box, size, scale);
  return {
    scale,
    x: (box.right - box.left) * scale > room.width ? MARGIN.side - box.left * scale : centre.x,
    y: (box.bottom - box.top) * scale > room.height ? MARGIN.top - box.top * scale : centre.y,
  };
}

const roomOf = (size: Size, margin: typeof MARGIN = MARGIN): Size => ({
  width: Math.max(40, size.width - 2 * margin.side),
  height: Math.max(40, size.height - margin.top - margin.bottom),
});

const centredOn = (box: Box, size: Size, scale: number, margin = MARGIN): Camera => ({
  scale,
  x: size.width / 2 - ((box.left + box.right) / 2) * scale,
  y: margin.top + roomOf(size, margin).height / 2 - ((box.top + box.bottom) / 2) * scale,
});

/** Zooms by `factor` while the face point under `at` (board pixels) stays where it is. */
export function zoomAt(camera: Camera, factor: number, at: Point): Camera {
  const scale = Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, camera.scale * factor));
  const [x, y] = toFace(camera, at);
  return { scale, x: at[0] - x * scale, y: at[1] - y * scale };
}

export const panBy = (camera: Camera, [dx, dy]: Point): Camera => ({
  ...camera,
  x: camera.x + dx,
  y: camera.y + dy,
});
