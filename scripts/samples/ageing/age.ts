import { type Point, type Random, seededRandom, subtract } from "../../../src/base/index.ts";
import type { Page } from "../drawing/page.ts";
import { fromScan, type Skew } from "../drawing/skew.ts";
import { copied, inkOf, specksOf } from "./copier.ts";
import { type Fold, foldAt, holeAt, type Stain, stainAt } from "./marks.ts";
import { bell, hills } from "./noise.ts";
import { blurred, sample } from "./raster.ts";

/** What befalls a printed sheet: copied once, folded, stained, scanned a little askew. */
export interface Ageing {
  readonly seed: number;
  readonly skew: Skew;
  readonly folds: readonly Fold[];
  readonly stains: readonly Stain[];
  /** Middles of punched holes, the drawing's pixels. */
  readonly holes: readonly Point[];
  /** 1 to 100. */
  readonly jpegQuality: number;
}

export const AGED: Ageing = {
  seed: 14,
  skew: { degrees: 0.55, scale: 0.994, shift: [3, -5], centre: [1754, 1240] },
  folds: [
    { x: 1719, strength: 1 },
    { y: 1232, strength: 0.7 },
  ],
  stains: [
    { x: 2960, y: 1780, radius: 205, ring: 11, strength: 0.62 },
    { x: 560, y: 940, radius: 92, ring: 0, strength: 0.42 },
    { x: 655, y: 1075, radius: 26, ring: 0, strength: 0.35 },
  ],
  holes: [
    [48, 768],
    [48, 1712],
  ],
  jpegQuality: 68,
};

type Rgb = readonly [number, number, number];

const PAPER: Rgb = [243, 236, 219];
const TONER: Rgb = [44, 42, 44];
const COFFEE: Rgb = [150, 106, 58];
const LID: Rgb = [206, 206, 202];
const HOLE: Rgb = [96, 96, 96];

/** From one colour to another, `share` of the way. */
const mix = (from: number, to: number, share: number): number => from + (to - from) * share;

/** The page as a scan of the aged paper: JPEG bytes, the same for the same page and seed. */
export function age(page: Page, ageing: Ageing): Uint8Array {
  const { width, height } = page.canvas;
  const colourAt = agedPaper(page, ageing);
  const picture = page.pen.createImageData(width, height);
  const { data } = picture;
  const origin = fromScan(ageing.skew, [0, 0]);
  const across = subtract(fromScan(ageing.skew, [1, 0]), origin);
  const down = subtract(fromScan(ageing.skew, [0, 1]), origin);
  const colour: [number, number, number] = [0, 0, 0];
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const x = origin[0] + column * across[0] + row * down[0];
      const y = origin[1] + column * across[1] + row * down[1];
      colourAt(x, y, colour);
      const index = (row * width + column) * 4;
      data[index] = colour[0];
      data[index + 1] = colour[1];
      data[index + 2] = colour[2];
      data[index + 3] = 255;
    }
  }
  grain(data, seededRandom(ageing.seed));
  page.pen.putImageData(picture, 0, 0);
  return new Uint8Array(page.canvas.toBuffer("image/jpeg", ageing.jpegQuality));
}

/** Writes into `colour` what the scanner sees at a point of the drawing. */
function agedPaper(page: Page, ageing: Ageing) {
  const { width, height } = page.canvas;
  const ink = blurred(inkOf(page), 0.75);
  const specks = specksOf(ageing.seed + 4, width, height);
  const wornToner = hills(ageing.seed + 1, 7);
  const paleAreas = hills(ageing.seed + 2, 420);
  const mottle = hills(ageing.seed + 3, 34);

  return (x: number, y: number, colour: [number, number, number]): void => {
    if (x < 0 || y < 0 || x >= width || y >= height) {
      // the paper's edge casts a shadow on the lid
      const off = Math.max(-x, -y, x - width, y - height);
      const dark = 1 - 0.35 * Math.exp(-off / 5);
      for (let c = 0; c < 3; c++) colour[c] = (LID[c] ?? 0) * dark;
      return;
    }
    let crease = 0;
    let worn = 0;
    for (const fold of ageing.folds) {
      const at = foldAt(fold, x, y);
      crease += at.light;
      worn = Math.max(worn, at.worn);
    }
    let brown = 0;
    for (const stain of ageing.stains) brown += stainAt(stain, x, y);
    const inked = sample(ink, x, y, 0);
    const toner = inked > 0 ? copied(inked, paleAreas(x, y), wornToner(x, y)) * (1 - worn) : 0;
    const black = Math.min(1, toner + sample(specks, x, y, 0));
    const light = lampAt(x / width, y / height) + mottle(x, y) * 0.008 + crease * 0.13;
    const hole = holeAt(ageing.holes, x, y);
    for (let c = 0; c < 3; c++) {
      const stained = (PAPER[c] ?? 0) * light * mix(1, (COFFEE[c] ?? 0) / 255, brown);
      colour[c] = mix(mix(stained, TONER[c] ?? 0, black), HOLE[c] ?? 0, hole);
    }
  };
}

/** Uneven lamp: brightest left of the middle, falling off towards the right and the bottom. */
function lampAt(across: number, down: number): number {
  const edge = Math.min(across, 1 - across, down, 1 - down);
  const falloff = 0.1 * (across - 0.38) ** 2 + 0.07 * (down - 0.35) ** 2;
  return 1.01 - falloff - 0.1 * Math.exp(-edge / 0.012);
}

/** The scanner's own noise, a little smoothed along the row as its sensor does. */
function grain(data: Uint8ClampedArray, random: Random): void {
  let last = 0;
  for (let index = 0; index < data.length; index += 4) {
    last = last * 0.45 + bell(random) * 2.6;
    for (let c = 0; c < 3; c++) data[index + c] = (data[index + c] ?? 0) + last;
  }
}
