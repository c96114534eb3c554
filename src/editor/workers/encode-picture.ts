import type { Picture } from "../../job/index.ts";
import type { Rgba } from "../../scan/index.ts";
import { bitsPng } from "./bits-png.ts";

/** Where a PNG is this much larger than a JPEG, it holds grain and shades and no drawing. */
const TOO_MUCH = 2;
const QUALITY = 0.92;
/** Pixels a side of each of the nine samples by which the kind of file is chosen. */
const SAMPLE = 192;

/**
 * The picture as a file that keeps its lines crisp and stays small: black and white at a bit a pixel,
 * what has even paper and clean lines as PNG, what a camera's grain is left in as JPEG.
 */
export async function encodePicture(picture: Rgba): Promise<Picture> {
  if (isBlackAndWhite(picture)) return { bytes: await bitsPng(picture), type: "image/png" };
  const type = await kindFor(picture);
  const whole = canvasOf(picture.width, picture.height);
  whole.ink.putImageData(imageDataOf(picture), 0, 0);
  return { bytes: await bytesOf(whole.canvas, type), type };
}

function isBlackAndWhite({ data }: Rgba): boolean {
  for (let at = 0; at < data.length; at += 4) {
    const value = data[at];
    if (value !== 0 && value !== 255) return false;
    if (data[at + 1] !== value || data[at + 2] !== value) return false;
  }
  return true;
}

/** By nine samples of it, side by side in one small picture. */
async function kindFor(picture: Rgba): Promise<"image/png" | "image/jpeg"> {
  const { width, height } = picture;
  const [wide, high] = [Math.min(SAMPLE, width), Math.min(SAMPLE, height)];
  const { canvas, ink } = canvasOf(3 * wide, 3 * high);
  const data = imageDataOf(picture);
  for (let n = 0; n < 9; n++) {
    const [column, row] = [n % 3, Math.floor(n / 3)];
    const left = Math.round((column * (width - wide)) / 2);
    const top = Math.round((row * (height - high)) / 2);
    ink.putImageData(data, column * wide - left, row * high - top, left, top, wide, high);
  }
  const png = await bytesOf(canvas, "image/png");
  const jpeg = await bytesOf(canvas, "image/jpeg");
  return png.length <= TOO_MUCH * jpeg.length ? "image/png" : "image/jpeg";
}

const imageDataOf = ({ data, width, height }: Rgba): ImageData =>
  new ImageData(data as Uint8ClampedArray<ArrayBuffer>, width, height);

function canvasOf(width: number, height: number) {
  const canvas = new OffscreenCanvas(width, height);
  const ink = canvas.getContext("2d", { alpha: false, willReadFrequently: true });
  if (!ink) throw new Error("The picture is too large for this device to write.");
  return { canvas, ink };
}

async function bytesOf(canvas: OffscreenCanvas, type: string): Promise<Uint8Array> {
  const blob = await canvas.convertToBlob({ type, quality: QUALITY });
  return new Uint8Array(await blob.arrayBuffer());
}
