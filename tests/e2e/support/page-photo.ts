import { createCanvas, ImageData, loadImage } from "@napi-rs/canvas";
import { seededRandom } from "../../../src/base/index.ts";
import type { Quad } from "../../../src/scan/index.ts";
import { photographed } from "../../support/drawn-pages/photographed.ts";

const SCAN = "sample-data/sweeper/images/sweeper-sheet-7.jpg";

/** A photo of the demo's diagram lying askew on a dark table. */
export interface PagePhoto {
  readonly file: { name: string; mimeType: string; buffer: Buffer };
  readonly width: number;
  readonly height: number;
  /** Edges of the page, in pixels of the photo. */
  readonly corners: Quad;
}

export async function photoOfPage(): Promise<PagePhoto> {
  const scan = await loadImage(SCAN);
  const page = createCanvas(scan.width, scan.height);
  const pen = page.getContext("2d");
  pen.drawImage(scan, 0, 0);
  const { data } = pen.getImageData(0, 0, page.width, page.height);
  const [width, height] = [1600, 1200];
  const corners: Quad = [
    [190, 130],
    [1450, 60],
    [1540, 1090],
    [90, 1010],
  ];
  const photo = photographed(
    seededRandom(7),
    { width: page.width, height: page.height, data },
    { width, height, corners, ground: 70, noise: 3 },
  );
  const canvas = createCanvas(width, height);
  const pixels = photo.data as Uint8ClampedArray<ArrayBuffer>;
  canvas.getContext("2d").putImageData(new ImageData(pixels, width, height), 0, 0);
  const buffer = Buffer.from(canvas.toBuffer("image/jpeg", 92));
  return { file: { name: "page.jpg", mimeType: "image/jpeg", buffer }, width, height, corners };
}
