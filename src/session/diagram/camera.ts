import type { Box, Point } from "../../base/index.ts";

/** How a sheet is looked at: the point of the sheet at the view's top left, and the enlargement. */
export interface Camera {
  readonly left: number;
  readonly top: number;
  /** Pixels of the screen per pixel of the sheet. */
  readonly zoom: number;
}

export interface ViewSize {
  readonly width: number;
  readonly height: number;
}

const LEAST_ZOOM = 0.01;
const MOST_ZOOM = 40;

export const toView = (camera: Camera, [x, y]: Point): Point => [
  (x - camera.left) * camera.zoom,
  (y - camera.top) * camera.zoom,
];

export const fromView = (camera: Camera, [x, y]: Point): Point => [
  camera.left + x / camera.zoom,
  camera.top + y / camera.zoom,
];

export const viewBox = (camera: Camera, { width, height }: ViewSize): Box => ({
  left: camera.left,
  top: camera.top,
  right: camera.left + width / camera.zoom,
  bottom: camera.top + height / camera.zoom,
});

/** Enlarges by `factor` and leaves the point of the sheet under `about` (of the view) where it is. */
export function zoomAbout(camera: Camera, about: Point, factor: number): Camera {
  const zoom = Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, camera.zoom * factor));
  const [x, y] = fromView(camera, about);
  return { zoom, left: x - about[0] / zoom, top: y - about[1] / zoom };
}

/** Moves the sheet along with a pointer that went by `by` pixels of the view. */
export const panBy = (camera: Camera, by: Point): Camera => ({
  ...camera,
  left: camera.left - by[0] / camera.zoom,
  top: camera.top - by[1] / camera.zoom,
});

/** The whole of `box` in the middle of the view, `margin` pixels of the view clear around it. */
export function fitBox(box: Box, size: ViewSize, margin: number, mostZoom = MOST_ZOOM): Camera {
  const width = Math.max(1, box.right - box.left);
  const height = Math.max(1, box.bottom - box.top);
  const zoom = Math.min(
    mostZoom,
    Math.max(
      LEAST_ZOOM,
      Math.min((size.width - 2 * margin) / width, (size.height - 2 * margin) / height),
    ),
  );
  return {
    zoom,
    left: (box.left + box.right) / 2 - size.width / 2 / zoom,
    top: (box.top + box.bottom) / 2 - size.height / 2 / zoom,
  };
}
