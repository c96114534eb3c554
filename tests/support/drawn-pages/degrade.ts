import { type Canvas, createCanvas, ImageData, loadImage } from "@napi-rs/canvas";
import type { Point, Random } from "../../../src/base/index.ts";
import { apply, homographyBetween } from "../../../src/scan/homography.ts";
import { greyFrom, type Rgba } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { proposeCorners } from "../../../src/scan/square/corners.ts";
import { warp } from "../../../src/scan/square/square-up.ts";
import { NOT_SQUARED, planOf, toPicture, toResult } from "../../../src/scan/square/squaring.ts";
import { cornersApart, edgesOf, looseCorners, photographed } from "./photographed.ts";

/** What a phone or a copier does to a page. */
export interface Harm {
  /** Degrees that the page lies askew. */
  readonly skew: number;
  /** Radius of the blur in pixels of the picture. */
  readonly blur: number;
  /** Standard deviation of the noise, in steps of 255. */
  readonly noise: number;
  /** How much darker the darkest place of the paper is, 0 to 1. */
  readonly shade: number;
  /** JPEG quality, 1 to 100; 0 for none. */
  readonly jpeg: number;
  /** Share of the page's ink in spots that were not printed. */
  readonly dropouts: number;
  /** Ink is this grey, 0 black. */
  readonly fade: number;
  /** Taken as a photo of the page on a table, at a slant, and squared up by the program; else 0. */
  readonly slant: number;
}

export const NO_HARM: Harm = {
  skew: 0,
  blur: 0,
  noise: 0,
  shade: 0,
  jpeg: 0,
  dropouts: 0,
  fade: 0,
  slant: 0,
};

/** From none (0) to what is barely legible (1). */
export function randomHarm(random: Random, level: number): Harm {
  const some = () => level * random.next();
  return {
    skew: (random.next() - 0.5) * 4 * level,
    blur: 1.4 * some(),
    noise: 24 * some(),
    shade: 0.6 * some(),
    jpeg: level === 0 ? 0 : Math.round(95 - 55 * some()),
    dropouts: 0.012 * some(),
    fade: 110 * some(),
    // Two pages of five are photos, more askew the worse they are; the others lie on a scanner's glass.
    slant: random.chance(0.4) ? level * (0.5 + 0.5 * random.next()) : 0,
  };
}

export interface Harmed {
  readonly picture: Rgba;
  /** Where a point of the drawn page is found in the picture. */
  readonly moved: (point: Point) => Point;
  /** The way back. */
  readonly unmoved: (point: Point) => Point;
  /** Whether a photo's corners were found by the program; true of a scan, which needs none. */
  readonly isFound: boolean;
}

/** The page as it comes to the program's line follower; `line` is its line's width in pixels. */
export async function harmed(
  random: Random,
  page: Rgba,
  harm: Harm,
  line: number,
): Promise<Harmed> {
  const source = canvasOf(page);
  const pen = source.getContext("2d");
  if (harm.dropouts > 0) dropOut(pen, random, page, harm.dropouts, line);
  return harm.slant > 0
    ? squaredPhoto(random, pen.getImageData(0, 0, page.width, page.height), harm)
    : scanned(random, source, harm);
}

/** A copier's or a scanner's picture, the page a little askew on its glass. */
async function scanned(random: Random, source: Canvas, harm: Harm): Promise<Harmed> {
  const angle = (harm.skew * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const width = Math.ceil(source.width * Math.abs(cos) + source.height * Math.abs(sin));
  const height = Math.ceil(source.width * Math.abs(sin) + source.height * Math.abs(cos));
  const moved = ([x, y]: Point): Point => {
    const [dx, dy] = [x - source.width / 2, y - source.height / 2];
    return [width / 2 + dx * cos - dy * sin, height / 2 + dx * sin + dy * cos];
  };
  const unmoved = ([x, y]: Point): Point => {
    const [dx, dy] = [x - width / 2, y - height / 2];
    return [source.width / 2 + dx * cos + dy * sin, source.height / 2 - dx * sin + dy * cos];
  };
  const canvas = createCanvas(width, height);
  const out = canvas.getContext("2d");
  out.fillStyle = "white";
  out.fillRect(0, 0, width, height);
  if (harm.blur > 0) out.filter = `blur(${harm.blur}px)`;
  out.setTransform(cos, sin, -sin, cos, ...moved([0, 0]));
  out.drawImage(source, 0, 0);
  const image = out.getImageData(0, 0, width, height);
  tone(image.data, width, height, random, harm);
  return { picture: await packed(image, harm.jpeg), moved, unmoved, isFound: true };
}

/** Corners proposed farther from the page's than this share of the photo are put right by hand. */
const NEAR = 0.006;

/** A photo at a slant, in which the program finds the page's corners and squares it up. */
async function squaredPhoto(random: Random, page: Rgba, harm: Harm): Promise<Harmed> {
  const share = 0.95 - 0.1 * harm.slant;
  const [width, height] = [Math.round(page.width / share), Math.round(page.height / share)];
  const corners = looseCorners(random, width, height, share);
  const ground = 30 + random.below(70);
  const shot = photographed(random, page, { width, height, corners, ground, noise: 0 });
  const canvas = createCanvas(width, height);
  const out = canvas.getContext("2d");
  if (harm.blur > 0) out.filter = `blur(${harm.blur}px)`;
  out.drawImage(canvasOf(shot), 0, 0);
  const image = out.getImageData(0, 0, width, height);
  tone(image.data, width, height, random, { ...harm, fade: 0.6 * harm.fade });
  const photo = await packed(image, harm.jpeg);
  const proposed = proposeCorners(greyFrom(photo));
  const isFound =
    proposed !== null && cornersApart(proposed.corners, corners) < NEAR * Math.hypot(width, height);
  const squaring = { ...NOT_SQUARED, corners: isFound ? proposed.corners : corners };
  const plan = planOf({ ...squaring, bow: isFound ? proposed.bow : null }, photo);
  const [there, back] = [
    homographyBetween(edgesOf(page), corners),
    homographyBetween(corners, edgesOf(page)),
  ];
  if (!plan || !there || !back) throw new Error("corners on a line");
  return {
    picture: finished(warp(photo, plan)),
    moved: (point) => toResult(plan, apply(there, point)) as Point,
    unmoved: (point) => apply(back, toPicture(plan, point)),
    isFound,
  };
}

function canvasOf({ width, height, data }: Rgba): Canvas {
  const canvas = createCanvas(width, height);
  const pixels = data.slice() as Uint8ClampedArray<ArrayBuffer>;
  canvas.getContext("2d").putImageData(new ImageData(pixels, width, height), 0, 0);
  return canvas;
}

/** Through a JPEG file of so much quality and back, or as it is for 0. */
async function packed(picture: Rgba, quality: number): Promise<Rgba> {
  const { width, height } = picture;
  if (quality === 0) return { width, height, data: picture.data };
  const canvas = canvasOf(picture);
  const loaded = await loadImage(canvas.toBuffer("image/jpeg", quality));
  const pen = canvas.getContext("2d");
  pen.drawImage(loaded, 0, 0);
  return { width, height, data: pen.getImageData(0, 0, width, height).data };
}

/** White specks about a line wide, as toner that did not hold. */
function dropOut(
  pen: ReturnType<ReturnType<typeof createCanvas>["getContext"]>,
  random: Random,
  { width, height }: Rgba,
  share: number,
  line: number,
): void {
  pen.fillStyle = "white";
  const area = line * line * 1.2;
  for (let n = 0; n < (share * width * height) / area; n++) {
    const radius = line * (0.2 + 0.6 * random.next());
    pen.beginPath();
    pen.arc(random.next() * width, random.next() * height, radius, 0, 2 * Math.PI);
    pen.fill();
  }
}

function tone(
  data: Uint8ClampedArray,
  width: number,
  height: number,
  random: Random,
  harm: Harm,
): void {
  const [sx, sy] = [random.next(), random.next()];
  const reach = Math.hypot(width, height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = 4 * (y * width + x);
      const light = 1 - harm.shade * (Math.hypot(x - sx * width, y - sy * height) / reach);
      // The sum of four even chances is near enough to a bell curve; its deviation is 0.577.
      const noise = random.next() + random.next() + random.next() + random.next() - 2;
      for (let c = 0; c < 3; c++) {
        const ink = harm.fade + ((255 - harm.fade) * (data[at + c] as number)) / 255;
        data[at + c] = ink * light + (noise * harm.noise) / 0.577;
      }
    }
  }
}
