import type { Point } from "../../../base/index.ts";
import {
  estimateWhite,
  type PhotoWhite,
  type Rgba,
  type SeenWire,
  STRIP_REACH,
  seenWire,
  whiteAt,
} from "../../../scan/index.ts";

/** Pixels of the photo a side that its white is looked for in: enough for any label or card. */
const WHITE_SIDE = 360;
/** Samples across half a wire: more tell no more of its colour. */
const MOST_REACH = 12;

/** A round spot of a photo, in its pixels. */
export interface PhotoSpot {
  readonly at: Point;
  readonly reach: number;
}

/** The white of the whole photo. */
export function whiteOf(photo: ImageBitmap): PhotoWhite {
  const scale = Math.min(1, WHITE_SIDE / Math.max(photo.width, photo.height));
  return estimateWhite(pixelsOf(photo, [0, 0], photo.width, photo.height, scale));
}

/** The white from a spot that somebody says is white; null where it is too bright or too dark. */
export function whiteOfSpot(photo: ImageBitmap, { at, reach }: PhotoSpot): PhotoWhite | null {
  const { pixels, middle, scale } = around(photo, at, reach, reach + 2);
  return whiteAt(pixels, middle, reach * scale);
}

/** The wire under a spot; null where it is too bright to tell a colour. */
export function wireOfSpot(
  photo: ImageBitmap,
  { at, reach }: PhotoSpot,
  white: PhotoWhite,
): SeenWire | null {
  const { pixels, middle, scale } = around(photo, at, reach, reach * STRIP_REACH + 2);
  return seenWire(pixels, middle, reach * scale, white);
}

/** Only what lies near a spot is read, and made no finer than is of use: nothing waits for a large photo. */
function around(photo: ImageBitmap, at: Point, reach: number, room: number) {
  const scale = Math.min(1, MOST_REACH / reach);
  const from: Point = [Math.floor(at[0] - room), Math.floor(at[1] - room)];
  const side = Math.ceil(2 * room);
  const middle: Point = [(at[0] - from[0]) * scale, (at[1] - from[1]) * scale];
  return { pixels: pixelsOf(photo, from, side, side, scale), middle, scale };
}

function pixelsOf(
  photo: ImageBitmap,
  [left, top]: Point,
  width: number,
  height: number,
  scale: number,
): Rgba {
  const [wide, high] = [width, height].map((side) => Math.max(1, Math.round(side * scale))) as [
    number,
    number,
  ];
  const canvas = new OffscreenCanvas(wide, high);
  const draw = canvas.getContext("2d", { willReadFrequently: true });
  if (!draw) throw new Error("no canvas to read a photo with");
  draw.imageSmoothingQuality = "high";
  draw.drawImage(photo, left, top, width, height, 0, 0, wide, high);
  return { width: wide, height: high, data: draw.getImageData(0, 0, wide, high).data };
}
