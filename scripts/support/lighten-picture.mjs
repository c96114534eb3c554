import { readFileSync, writeFileSync } from "node:fs";
import { createCanvas, loadImage } from "@napi-rs/canvas";

/** Shades of each of red, green and blue that are kept: few enough to pack the grain of a scan. */
const SHADES = 32;

/**
 * Makes a PNG file smaller, in place, by rounding its colours: nothing that the eye misses on a
 * page of the docs.
 *
 * @param {string} path
 */
export async function lightenPicture(path) {
  const image = await loadImage(readFileSync(path));
  const canvas = createCanvas(image.width, image.height);
  const context = canvas.getContext("2d");
  context.drawImage(image, 0, 0);
  const pixels = context.getImageData(0, 0, image.width, image.height);
  const step = 255 / (SHADES - 1);
  for (let at = 0; at < pixels.data.length; at++) {
    pixels.data[at] = Math.round((pixels.data[at] ?? 0) / step) * step;
  }
  context.putImageData(pixels, 0, 0);
  writeFileSync(path, await canvas.encode("png"));
}
