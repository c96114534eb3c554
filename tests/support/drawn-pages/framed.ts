import { createCanvas, ImageData } from "@napi-rs/canvas";
import type { Rgba } from "../../../src/scan/raster.ts";

/** A page with a frame drawn around the drawing, its line's middle `inset` pixels from the page's edges. */
export function framed(page: Rgba, inset: number, line: number): Rgba {
  const { width, height } = page;
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext("2d");
  const data = page.data.slice() as Uint8ClampedArray<ArrayBuffer>;
  pen.putImageData(new ImageData(data, width, height), 0, 0);
  pen.lineWidth = line;
  pen.strokeRect(inset, inset, width - 2 * inset, height - 2 * inset);
  return { width, height, data: pen.getImageData(0, 0, width, height).data };
}
