import { readFileSync, writeFileSync } from "node:fs";
import { createCanvas, loadImage } from "@napi-rs/canvas";

/** Shades of each of red, green and blue: as many as fit, and never so few that it shows. */
const SHADES = [128, 64, 32];

/**
 * Makes a PNG file smaller, in place, by rounding its colours no more than it takes to get it
 * below `limit` bytes: the grain of a scan packs badly.
 *
 * @param {string} path
 * @param {number} limit
 * @returns {Promise<number>} its size in the end, above the limit when rounding was not enough
 */
export async function lightenPicture(path, limit) {
  const original = readFileSync(path);
  if (original.length <= limit) return original.length;
  const image = await loadImage(original);
  const canvas = createCanvas(image.width, image.height);
  const context = canvas.getContext("2d");
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  /** @type {Uint8Array} */
  let packed = original;
  for (const shades of SHADES) {
    const step = 255 / (shades - 1);
    const rounded = context.createImageData(image.width, image.height);
    for (let at = 0; at < data.length; at++) {
      rounded.data[at] = Math.round(Math.round((data[at] ?? 0) / step) * step);
    }
    context.putImageData(rounded, 0, 0);
    packed = await canvas.encode("png");
    if (packed.length <= limit) break;
  }
  writeFileSync(path, packed);
  return packed.length;
}
