import type { Box } from "../../../../base/index.ts";
import { type Camera, type ViewSize, viewBox } from "../../../../session/index.ts";

/** Paints what a camera sees onto a canvas whose units are pixels of the view. */
export type Paint = (canvas: CanvasRenderingContext2D, camera: Camera, size: ViewSize) => void;

/** Where two paintings differ, pixels of the sheet. */
export interface Differences {
  readonly boxes: readonly Box[];
  /** How far words may reach from what they belong to. */
  readonly reach: number;
}

/** A slow drawing kept as a bitmap, so that panning and zooming over it stay quick. */
export interface KeptView<Of extends object> {
  /**
   * Draws through the bitmap. `of` names what is painted: another object, another painting.
   * `bounds` holds all there is to see, pixels of the sheet; null when there is nothing. `changed`
   * says where the painting differs from an earlier one; null: everywhere.
   */
  draw(
    canvas: CanvasRenderingContext2D,
    camera: Camera,
    size: ViewSize,
    of: Of,
    bounds: Box | null,
    paint: Paint,
    changed?: (before: Of) => Differences | null,
  ): void;
}

/** Painting that takes less than this, milliseconds, is done anew in every frame and always sharp. */
const QUICK = 5;
/** Part of the view that is painted beyond each of its sides, to pan into. */
const MARGIN = 0.3;
/** How long the zoom must rest before the bitmap is painted sharp again, milliseconds. */
const REST = 140;
/** Beyond this a scaled bitmap is too coarse to look at even in passing. */
const MOST_SCALE = 3;

interface Kept<Of> {
  readonly of: Of;
  readonly camera: Camera;
  readonly size: ViewSize;
  readonly density: number;
  readonly bitmap: HTMLCanvasElement;
}

/** @param again draws the layer once more, for when the zoom has come to rest */
export function createKeptView<Of extends object>(again: () => void): KeptView<Of> {
  let kept: Kept<Of> | null = null;
  let cost = 0;
  let timer = 0;

  const repaint = (camera: Camera, size: ViewSize, of: Of, paint: Paint): Kept<Of> => {
    const density = globalThis.devicePixelRatio || 1;
    const wide: ViewSize = {
      width: Math.ceil(size.width * (1 + 2 * MARGIN)),
      height: Math.ceil(size.height * (1 + 2 * MARGIN)),
    };
    const wider: Camera = {
      zoom: camera.zoom,
      left: camera.left - (size.width * MARGIN) / camera.zoom,
      top: camera.top - (size.height * MARGIN) / camera.zoom,
    };
    const bitmap = kept?.bitmap ?? document.createElement("canvas");
    bitmap.width = Math.ceil(wide.width * density);
    bitmap.height = Math.ceil(wide.height * density);
    const canvas = bitmap.getContext("2d");
    if (!canvas) throw new Error("no canvas to draw on");
    canvas.scale(density, density);
    const began = performance.now();
    paint(canvas, wider, wide);
    cost = performance.now() - began;
    return { of, camera: wider, size: wide, density, bitmap };
  };

  return {
    draw(canvas, camera, size, of, bounds, paint, changed) {
      if (cost < QUICK) {
        const began = performance.now();
        paint(canvas, camera, size);
        cost = performance.now() - began;
        return;
      }
      if (kept && kept.of !== of && kept.camera.zoom === camera.zoom) {
        const differences = changed?.(kept.of) ?? null;
        if (differences && patch(kept, differences, paint)) kept = { ...kept, of };
      }
      const fresh = kept !== null && kept.of === of && covers(kept, camera, size, bounds);
      const scale = kept ? camera.zoom / kept.camera.zoom : 0;
      const passing = fresh && scale !== 1 && scale < MOST_SCALE && scale > 1 / MOST_SCALE;
      clearTimeout(timer);
      if (passing) {
        timer = window.setTimeout(() => {
          kept = null;
          again();
        }, REST);
      } else if (!fresh || scale !== 1) kept = repaint(camera, size, of, paint);
      if (kept) blit(canvas, kept, camera);
    },
  };
}

/** A painting that differs in more of its area than this is painted anew as a whole. */
const MOST_PATCHED = 0.35;

/** Paints anew where the boxes lie. False when that is too much to be any better than all of it. */
function patch<Of>(kept: Kept<Of>, { boxes, reach }: Differences, paint: Paint): boolean {
  const { camera, size, density, bitmap } = kept;
  const { zoom } = camera;
  const around = Math.ceil(reach * zoom);
  // Whole pixels of the bitmap: a clip through the middle of one would leave a seam.
  const down = (value: number) => Math.floor(value * density) / density;
  const up = (value: number) => Math.ceil(value * density) / density;
  let [left, top, right, bottom] = [size.width, size.height, 0, 0];
  for (const box of boxes) {
    left = Math.min(left, down((box.left - camera.left) * zoom));
    top = Math.min(top, down((box.top - camera.top) * zoom));
    right = Math.max(right, up((box.right - camera.left) * zoom));
    bottom = Math.max(bottom, up((box.bottom - camera.top) * zoom));
  }
  left = Math.max(0, left);
  top = Math.max(0, top);
  const width = Math.min(size.width, right) - left;
  const height = Math.min(size.height, bottom) - top;
  // Nothing of it was painted.
  if (width <= 0 || height <= 0) return true;
  if (width * height > MOST_PATCHED * size.width * size.height) return false;
  const canvas = bitmap.getContext("2d");
  if (!canvas) return false;
  canvas.save();
  canvas.beginPath();
  canvas.rect(left, top, width, height);
  canvas.clip();
  canvas.clearRect(left, top, width, height);
  canvas.translate(left - around, top - around);
  const seen: Camera = {
    zoom,
    left: camera.left + (left - around) / zoom,
    top: camera.top + (top - around) / zoom,
  };
  paint(canvas, seen, { width: width + 2 * around, height: height + 2 * around });
  canvas.restore();
  return true;
}

/** True when all that the camera sees of `bounds` was painted. */
function covers(kept: Kept<unknown>, camera: Camera, size: ViewSize, bounds: Box | null): boolean {
  if (!bounds) return true;
  const seen = viewBox(camera, size);
  const has = viewBox(kept.camera, kept.size);
  return (
    Math.max(seen.left, bounds.left) >= has.left &&
    Math.max(seen.top, bounds.top) >= has.top &&
    Math.min(seen.right, bounds.right) <= has.right &&
    Math.min(seen.bottom, bounds.bottom) <= has.bottom
  );
}

function blit(canvas: CanvasRenderingContext2D, kept: Kept<unknown>, camera: Camera): void {
  const scale = camera.zoom / kept.camera.zoom;
  const left = (kept.camera.left - camera.left) * camera.zoom;
  const top = (kept.camera.top - camera.top) * camera.zoom;
  const { density, bitmap } = kept;
  // At the same zoom whole pixels, so that lines stay as sharp as they were painted.
  const [x, y] =
    scale === 1
      ? [Math.round(left * density) / density, Math.round(top * density) / density]
      : [left, top];
  canvas.drawImage(
    bitmap,
    x,
    y,
    (bitmap.width / density) * scale,
    (bitmap.height / density) * scale,
  );
}
