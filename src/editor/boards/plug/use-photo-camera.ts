import { useState } from "react";
import type { Point } from "../../../base/index.ts";
import { type Camera, panBy, type Size, toBoard, toFace } from "./camera.ts";
import { wholeCamera, zoomed } from "./photo-camera.ts";

/** How a photo lies in its frame, and what moves it there. */
export interface PhotoView {
  readonly camera: Camera;
  /** All of the photo is in sight: it gets no smaller. */
  readonly isWhole: boolean;
  /** The middle of the frame. */
  readonly middle: Point;
  /** A place in the frame as pixels of the photo, never beside it. */
  readonly onPhoto: (at: Point) => Point;
  readonly clamp: (at: Point) => Point;
  /** Where a pixel of the photo lies in the frame, as style. */
  readonly place: (at: Point) => { left: number; top: number };
  /** The photo itself, as style. */
  readonly lie: { left: number; top: number; width: number; height: number };
  readonly pan: (by: Point) => void;
  readonly zoom: (factor: number, at: Point) => void;
  readonly onSize: (size: Size) => void;
}

/** A photo of so many pixels, seen whole until it is moved. */
export function usePhotoCamera(width: number, height: number): PhotoView {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  const [moved, setCamera] = useState<Camera | null>(null);
  const whole = wholeCamera({ right: width, bottom: height }, size);
  const camera = moved ?? whole;
  const clamp = ([x, y]: Point): Point => [
    Math.min(width, Math.max(0, x)),
    Math.min(height, Math.max(0, y)),
  ];
  const place = (point: Point) => {
    const [left, top] = toBoard(camera, point);
    return { left, top };
  };
  return {
    camera,
    isWhole: camera.scale <= whole.scale,
    middle: [size.width / 2, size.height / 2],
    onPhoto: (at) => clamp(toFace(camera, at)),
    clamp,
    place,
    lie: { ...place([0, 0]), width: width * camera.scale, height: height * camera.scale },
    pan: (by) => setCamera((now) => panBy(now ?? whole, by)),
    zoom: (factor, at) => setCamera((now) => zoomed(now ?? whole, factor, at, whole)),
    onSize: setSize,
  };
}
