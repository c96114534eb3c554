import type { Point } from "../../../base/index.ts";
import { type Camera, type Size, toFace } from "./camera.ts";

/** The whole photo in the frame, edge to edge. */
export function wholeCamera(
  frame: { right: number; bottom: number },
  { width, height }: Size,
): Camera {
  const scale = Math.max(0.001, Math.min(width / frame.right, height / frame.bottom));
  return {
    scale,
    x: (width - frame.right * scale) / 2,
    y: (height - frame.bottom * scale) / 2,
  };
}

/** Never smaller than the whole photo, and back in the middle there. */
export function zoomed(camera: Camera, factor: number, at: Point, whole: Camera): Camera {
  const scale = Math.min(whole.scale * 12, camera.scale * factor);
  if (scale <= whole.scale) return whole;
  const [x, y] = toFace(camera, at);
  return { scale, x: at[0] - x * scale, y: at[1] - y * scale };
}
