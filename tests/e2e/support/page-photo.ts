import { createCanvas, ImageData, loadImage } from "@napi-rs/canvas";
import { seededRandom } from "../../../src/base/index.ts";
import type { Quad, Rgba } from "../../../src/scan/index.ts";
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

/** How the photo is taken. */
export interface Taken {
  readonly width: number;
  readonly height: number;
  readonly corners: Quad;
  /** How much darker the photo is at its far corner than at its near one, 0 to 1. */
  readonly shade: number;
  /** JPEG quality, 1 to 100. */
  readonly quality: number;
}

const SMALL: Taken = {
  width: 1600,
  height: 1200,
  corners: [
    [190, 130],
    [1450, 60],
    [1540, 1090],
    [90, 1010],
  ],
  shade: 0,
  quality: 92,
};

/** As a phone takes it beside the machine: a shadow over one corner, and fine enough to read. */
export const SHADED: Taken = {
  width: 2600,
  height: 1950,
  corners: [
    [250, 170],
    [2380, 90],
    [2490, 1800],
    [120, 1690],
  ],
  shade: 0.35,
  quality: 88,
};

export async function photoOfPage(taken: Taken = SMALL): Promise<PagePhoto> {
  const scan = await loadImage(SCAN);
  const page = createCanvas(scan.width, scan.height);
  const pen = page.getContext("2d");
  pen.drawImage(scan, 0, 0);
  const { data } = pen.getImageData(0, 0, page.width, page.height);
  const { width, height, corners } = taken;
  const photo = photographed(
    seededRandom(7),
    { width: page.width, height: page.height, data },
    { width, height, corners, ground: 70, noise: 3 },
  );
  const canvas = createCanvas(width, height);
  const pixels = photo.data as Uint8ClampedArray<ArrayBuffer>;
  if (taken.shade > 0) darken(photo, taken.shade);
  canvas.getContext("2d").putImageData(new ImageData(pixels, width, height), 0, 0);
  const buffer = Buffer.from(canvas.toBuffer("image/jpeg", taken.quality));
  return { file: { name: "page.jpg", mimeType: "image/jpeg", buffer }, width, height, corners };
}

/** In place: light falls from the near corner, the bottom left, as under a lamp to one side. */
function darken({ width, height, data }: Rgba, shade: number): void {
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++, at += 4) {
      const far = (x / width + 1 - y / height) / 2;
      const light = 1 - shade * far * far;
      for (let i = 0; i < 3; i++) data[at + i] = (data[at + i] as number) * light;
    }
  }
}
