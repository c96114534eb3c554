import type { Point } from "../../../base/index.ts";
import { type Camera, type Size, toFace } from "./camera.ts";

/** The whole picture in a view, with so many pixels of room to its edges. */
export function wholeCamera(
  picture: { right: number; bottom: number },
  { width, height }: Size,
  room = 0,
): Camera {
  const scale = Math.max(
    0.001,
    Math.min((width - 2 * room) / picture.right, (height - 2 * room) / picture.bottom),
  );
  return {
    scale,
    x: (width - picture.right * scale) / 2,
    y: (height - picture.bottom * scale) / 2,
  };
}

/** Never smaller than the whole picture, and back in the middle there; no larger than `most`. */
export function zoomed(
  camera: Camera,
  factor: number,
  at: Point,
  whole: Camera,
  most = 12 * whole.scale,
): Camera {
  const scale = Math.min(most, camera.scale * factor);
  if (scale <= whole.scale) return whole;
  const [x, y] = toFace(camera, at);
  return { scale, x: at[0] - x * scale, y: at[1] - y * scale };
}
