import { describe, expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import {
  apply,
  type Homography,
  homographyBetween,
  type Quad,
} from "../../../src/scan/homography.ts";
import { type Grey, greyFrom, greyOf, type Rgba } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { bowIn, straightened } from "../../../src/scan/square/bow.ts";
import { proposeCorners } from "../../../src/scan/square/corners.ts";
import { squareUp, warp } from "../../../src/scan/square/square-up.ts";
import { NOT_SQUARED, planOf } from "../../../src/scan/square/squaring.ts";
import { drawPage } from "../../support/drawn-pages/draw.ts";
import { makePage } from "../../support/drawn-pages/lattice.ts";
import { looseCorners, photographed } from "../../support/drawn-pages/photographed.ts";
import { randomStyle } from "../../support/drawn-pages/style.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 1);

/** Soft hills, which bilinear sampling follows to a few grey levels. */
function hills(width: number, height: number): Grey {
  const grey = greyOf(width, height);
  for (let at = 0; at < grey.data.length; at++) {
    const [x, y] = [at % width, Math.floor(at / width)];
    grey.data[at] = 128 + 60 * Math.sin(x / 9) + 60 * Math.cos(y / 11);
  }
  return grey;
}

const coloured = ({ width, height, data }: Grey): Rgba => {
  const colours = new Uint8ClampedArray(4 * data.length);
  for (const [at, value] of data.entries()) {
    colours.set([value, 255 - value, value >> 1, 255], 4 * at);
  }
  return { width, height, data: colours };
};

describe("a warp", () => {
  const corners: Quad = [
    [18, 11],
    [170, 24],
    [180, 140],
    [9, 128],
  ];

  test("and the warp back give the picture again", () => {
    const picture = hills(200, 150);
    const plan = planOf({ ...NOT_SQUARED, corners }, picture);
    if (!plan) throw new Error("no page");
    const there = finished(warp(picture, plan));
    // The way back: where the picture's pixels of the page are found in the result.
    let [worst, count] = [0, 0];
    for (let y = 0; y < there.height; y += 1) {
      for (let x = 0; x < there.width; x += 1) {
        const [u, v] = apply(plan.toStraight, [x, y]);
        const real = 128 + 60 * Math.sin(u / 9) + 60 * Math.cos(v / 11);
        worst = Math.max(worst, Math.abs(real - (there.data[y * there.width + x] as number)));
        count++;
      }
    }
    expect(count).toBeGreaterThan(17_000);
    expect(worst).toBeLessThan(3);
    const { width, height } = there;
    // The page as a part of a picture of the old size: its corners at the same places as before.
    const back = finished(
      warp(there, { width: 200, height: 150, toStraight: inverse(plan.toStraight), bow: null }),
    );
    expect([width, height]).toEqual([plan.width, plan.height]);
    let worstBack = 0;
    for (let y = 30; y < 120; y++) {
      for (let x = 25; x < 165; x++) {
        const at = y * 200 + x;
        const off = Math.abs((back.data[at] as number) - (picture.data[at] as number));
        worstBack = Math.max(worstBack, off);
      }
    }
    expect(worstBack).toBeLessThan(4);
  });

  test("moves each colour as it would a grey picture", () => {
    const picture = hills(120, 90);
    const squaring = { ...NOT_SQUARED, level: 7, bow: bowIn(120, 90, -0.1) };
    const grey = finished(squareUp(picture, squaring));
    const colours = finished(squareUp(coloured(picture), squaring));
    if (!grey || !colours) throw new Error("no page");
    let worst = 0;
    grey.data.forEach((value, at) => {
      worst = Math.max(worst, Math.abs(value - (colours.data[4 * at] as number)));
      expect(colours.data[4 * at + 3]).toBe(255);
    });
    // Two bytes at once are rounded twice.
    expect(worst).toBeLessThanOrEqual(1);
  });
});

test("a photographed page, squared up by its own proposal, is the page again", () => {
  const random = seededRandom(SEED);
  const style = { ...randomStyle(random), line: 0.5, pitch: 5 };
  const page = drawPage(random, makePage(random, 24, 16), style, 100).picture;
  const [width, height] = [900, 660];
  const bow = bowIn(width, height, -0.04);
  const photo = photographed(random, page, {
    width,
    height,
    corners: looseCorners(random, width, height, 0.9),
    ground: 70,
    noise: 2,
    unbowed: (point) => straightened(bow, point),
  });
  const found = proposeCorners(greyFrom(photo));
  if (!found) throw new Error("no corners");
  const result = finished(squareUp(photo, { ...NOT_SQUARED, ...found }));
  if (!result) throw new Error("no page");
  const [grey, drawn] = [greyFrom(result), greyFrom(page)];
  // Of the ink of the drawing nearly all is dark in the result at the same share of width and height.
  let [ink, met, paper, clear] = [0, 0, 0, 0];
  for (let y = 0; y < drawn.height; y += 2) {
    for (let x = 0; x < drawn.width; x += 2) {
      const isInk = (drawn.data[y * drawn.width + x] as number) < 40;
      const isPaper = isBlank(drawn, x, y);
      if (!isInk && !isPaper) continue;
      const column = Math.floor(((x + 0.5) / drawn.width) * grey.width);
      const row = Math.floor(((y + 0.5) / drawn.height) * grey.height);
      const isDark = (grey.data[row * grey.width + column] as number) < 150;
      if (isInk) ink++;
      if (isInk && isDark) met++;
      if (isPaper) paper++;
      if (isPaper && !isDark) clear++;
    }
  }
  expect(ink).toBeGreaterThan(500);
  expect(met / ink, `seed ${SEED}`).toBeGreaterThan(0.97);
  expect(clear / paper).toBeGreaterThan(0.995);
});

/** No ink within two pixels. */
function isBlank({ width, height, data }: Grey, x: number, y: number): boolean {
  for (let row = Math.max(0, y - 2); row <= Math.min(height - 1, y + 2); row++) {
    for (let column = Math.max(0, x - 2); column <= Math.min(width - 1, x + 2); column++) {
      if ((data[row * width + column] as number) < 200) return false;
    }
  }
  return true;
}

/** The way back: that of four corners, of which it takes each to where it came from. */
function inverse(there: Homography): Homography {
  const corners: Quad = [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ];
  const back = homographyBetween(
    corners.map((corner) => apply(there, corner)) as unknown as Quad,
    corners,
  );
  if (!back) throw new Error("no way back");
  return back;
}
