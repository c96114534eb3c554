import { type Camera, type ViewSize, viewBox } from "../../../../session/index.ts";
import type { PictureTiles } from "./picture-tiles.ts";

/** Draws what the camera sees of a picture, from the coarsest level that is still sharp. */
export function drawPicture(
  ink: CanvasRenderingContext2D,
  tiles: PictureTiles,
  camera: Camera,
  size: ViewSize,
): void {
  const shown = viewBox(camera, size);
  const density = globalThis.devicePixelRatio || 1;
  const wanted = Math.floor(Math.log2(1 / (camera.zoom * density)));
  const level = levelToDraw(tiles, Math.max(0, Math.min(tiles.levels.length - 1, wanted)));
  ink.imageSmoothingEnabled = camera.zoom * density < 3;
  for (const tile of tiles.levels[level] ?? []) {
    // A frame asked for before another picture took the place of this one may still come: a
    // closed bitmap has no width, and drawing it throws.
    if (tile.bitmap.width === 0) continue;
    if (tile.left > shown.right || tile.left + tile.width < shown.left) continue;
    if (tile.top > shown.bottom || tile.top + tile.height < shown.top) continue;
    // Whole pixels of the screen, so that no seam shows between tiles.
    const left = Math.floor((tile.left - camera.left) * camera.zoom);
    const top = Math.floor((tile.top - camera.top) * camera.zoom);
    const right = Math.floor((tile.left + tile.width - camera.left) * camera.zoom);
    const bottom = Math.floor((tile.top + tile.height - camera.top) * camera.zoom);
    ink.drawImage(tile.bitmap, left, top, right - left, bottom - top);
  }
}

/** The wanted level, or while it is still being read the next coarser one. */
function levelToDraw(tiles: PictureTiles, wanted: number): number {
  for (let level = wanted; level < tiles.levels.length; level++) {
    if ((tiles.levels[level]?.length ?? 0) > 0) return level;
  }
  return tiles.levels.length - 1;
}
