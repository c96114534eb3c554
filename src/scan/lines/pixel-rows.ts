import type { Box } from "../../base/index.ts";

/** Whole pixels of a picture, right and bottom outside. */
export interface PixelRows {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The pixels of a box with a rim round it, those outside the picture left out. */
export function pixelRows(
  { left, top, right, bottom }: Box,
  rim: number,
  { width, height }: { readonly width: number; readonly height: number },
): PixelRows {
  return {
    left: Math.max(0, Math.floor(left) - rim),
    top: Math.max(0, Math.floor(top) - rim),
    right: Math.min(width, Math.ceil(right) + rim + 1),
    bottom: Math.min(height, Math.ceil(bottom) + rim + 1),
  };
}
