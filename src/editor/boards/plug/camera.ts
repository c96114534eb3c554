import type { Box, Point } from "../../../base/index.ts";

/** How millimetres of the face come onto the board: `px = mm * scale + offset`. */
export interface Camera {
  /** Pixels per millimetre. */
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room kept free around the face: the words over it, codes that stand out of the housing. */
const MARGIN = { top: 52, side: 20, bottom: 24 };
/** Neighbouring cavities are drawn no further apart than this when everything is shown. */
const WIDEST_SPACING = 150;
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
export function fitCamera(bounds: Box, size: Size, spacing: number): Camera {
  const width = bounds.right - bounds.left;
  const height = bounds.bottom - bounds.top;
  const roomX = Math.max(40, size.width - 2 * MARGIN.side);
  const roomY = Math.max(40, size.height - MARGIN.top - MARGIN.bottom);
  const scale = Math.min(roomX / width, roomY / height, WIDEST_SPACING / spacing, LARGEST_SCALE);
  return {
    scale,
    x: size.width / 2 - ((bounds.left + bounds.right) / 2) * scale,
    y: MARGIN.top + roomY / 2 - ((bounds.top + bounds.bottom) / 2) * scale,
  };
}

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
