import { readFile } from "node:fs/promises";
import { createCanvas, loadImage } from "@napi-rs/canvas";
import { preparePage } from "../../../src/scan/lines/prepared-page.ts";
import { type Grey, greyFrom } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { findSymbols, type SymbolSearch } from "../../../src/scan/symbols/find-symbols.ts";
import { drawAlone, type Pen } from "./page.ts";

/** Proposals of this confidence and more are called sure. */
export const SURE = 0.8;

/** What is proposed on a picture. */
export const found = (grey: Grey, search: Partial<SymbolSearch> = {}) =>
  finished(findSymbols(finished(preparePage(grey)), { examples: [], ...search }));

/** A page of 800 by 500 drawn with a pen of 4. */
export const page = (draw: (pen: Pen) => void): Grey => greyFrom(drawAlone(800, 500, 4, draw));

export const wire = (pen: Pen, ...points: (readonly [number, number])[]) => {
  pen.beginPath();
  for (const [x, y] of points) pen.lineTo(x, y);
  pen.stroke();
};

export const ring = (pen: Pen, x: number, y: number, radius: number) => {
  pen.beginPath();
  pen.arc(x, y, radius, 0, 2 * Math.PI);
  pen.stroke();
};

/** A picture from a file, on white. */
export async function greyOf(file: string | URL): Promise<Grey> {
  const image = await loadImage(await readFile(file));
  const { width, height } = image;
  const pen = createCanvas(width, height).getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.drawImage(image, 0, 0);
  return greyFrom({ width, height, data: pen.getImageData(0, 0, width, height).data });
}
