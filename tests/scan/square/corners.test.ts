import { describe, expect, test } from "vitest";
import { type Point, type Random, seededRandom } from "../../../src/base/index.ts";
import { apply, homographyBetween, type Quad } from "../../../src/scan/homography.ts";
import { type Grey, greyFrom, greyOf, type Rgba } from "../../../src/scan/raster.ts";
import { bowed, bowIn, straightened } from "../../../src/scan/square/bow.ts";
import { bowNear, proposeCorners } from "../../../src/scan/square/corners.ts";
import { sidesCutOff } from "../../../src/scan/square/cut-off.ts";
import { drawPage } from "../../support/drawn-pages/draw.ts";
import { framed } from "../../support/drawn-pages/framed.ts";
import { makePage } from "../../support/drawn-pages/lattice.ts";
import { box, sheet } from "../../support/drawn-pages/marks.ts";
import { looseCorners, photographed } from "../../support/drawn-pages/photographed.ts";
import { randomStyle } from "../../support/drawn-pages/style.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
const [WIDTH, HEIGHT] = [800, 600];
const ROUNDS = [1, 2, 3, 4];

function drawn(random: Random): Rgba {
  const style = { ...randomStyle(random), line: 0.35, pitch: 4 };
  return drawPage(random, makePage(random, 30, 20), style, 150).picture;
}

/** The largest distance between corners found and where they are, in pixels. */
const error = (found: Quad, real: readonly Point[]) =>
  Math.max(
    ...found.map(([x, y], n) => Math.hypot(x - (real[n]?.[0] ?? 0), y - (real[n]?.[1] ?? 0))),
  );

describe("corners of a page on a darker table", () => {
  test.each(ROUNDS)("are found to 0.5 px, noise and shadow notwithstanding (page %i)", (round) => {
    const random = seededRandom(SEED * 1000 + round);
    const corners = looseCorners(random, WIDTH, HEIGHT, 0.8);
    const ground = 40 + random.below(110);
    const photo = photographed(random, drawn(random), {
      width: WIDTH,
      height: HEIGHT,
      corners,
      ground,
      noise: 6 * random.next(),
    });
    for (let at = 0; at < photo.data.length; at++) {
      if (at % 4 < 3) photo.data[at] = (photo.data[at] as number) * (1 - ((at / 4) % WIDTH) / 2500);
    }
    const found = proposeCorners(greyFrom(photo));
    expect(found?.of, `seed ${SEED}`).toBe("page");
    expect(found?.confidence).toBeGreaterThan(0.8);
    expect(found && error(found.corners, corners)).toBeLessThan(0.5);
    expect(found?.bow).toBeNull();
    expect(found?.cutOff).toEqual([]);
  });

  test.each([
    ["left", [0, 3], [-120, 0]],
    ["bottom", [2, 3], [0, 260]],
  ] as const)(
    "one that goes on beyond the picture, to the %s, is told",
    (side, beyond, [dx, dy]) => {
      const random = seededRandom(SEED * 1000);
      const inside: readonly Point[] = [
        [60, 50],
        [WIDTH - 70, 40],
        [WIDTH - 60, HEIGHT - 60],
        [50, HEIGHT - 45],
      ];
      const corners = inside.map(
        ([x, y], n): Point =>
          (beyond as readonly number[]).includes(n) ? [x + dx, y + dy] : [x, y],
      );
      const photo = photographed(random, drawn(random), {
        width: WIDTH,
        height: HEIGHT,
        corners: corners as unknown as Quad,
        ground: 90,
        noise: 4,
      });
      // What is taken for its edge there is something drawn on it.
      expect(sidesCutOff(greyFrom(photo), inside as unknown as Quad)).toEqual([side]);
    },
  );

  test.each(ROUNDS)("are found to 0.5 px through a lens that bows them (page %i)", (round) => {
    const random = seededRandom(SEED * 1000 + 500 + round);
    const corners = looseCorners(random, WIDTH, HEIGHT, 0.8);
    const bow = bowIn(WIDTH, HEIGHT, -0.015 - 0.05 * random.next());
    const photo = photographed(random, drawn(random), {
      width: WIDTH,
      height: HEIGHT,
      corners,
      ground: 90,
      noise: 4,
      unbowed: (point) => straightened(bow, point),
    });
    const grey = greyFrom(photo);
    const found = proposeCorners(grey);
    const real = corners.map((corner) => bowed(bow, corner));
    expect(found && error(found.corners, real), `seed ${SEED}`).toBeLessThan(0.5);
    expect(Math.abs((found?.bow?.k ?? 0) - bow.k)).toBeLessThan(0.003);
    // Corners set by hand are never so exact; the bow is found near them all the same.
    const byHand = real.map(([x, y]) => [x + 2, y - 2]) as unknown as Quad;
    expect(Math.abs((bowNear(grey, byHand)?.k ?? 0) - bow.k)).toBeLessThan(0.003);
  });
});

describe("a frame drawn around the drawing", () => {
  const INSET = 20;

  test("is found where no table shows, to 0.2 px of the middle of its line", () => {
    const grey = greyFrom(framed(drawn(seededRandom(SEED)), 12.5, 3));
    const found = proposeCorners(grey);
    const [right, bottom] = [grey.width - 13, grey.height - 13];
    expect(found?.of).toBe("frame");
    expect(
      found &&
        error(found.corners, [
          [12, 12],
          [right, 12],
          [right, bottom],
          [12, bottom],
        ]),
    ).toBeLessThan(0.2);
  });

  test.each(ROUNDS)("is found on a table as bright as the paper, to 0.5 px (page %i)", (round) => {
    const random = seededRandom(SEED * 1000 + 700 + round);
    const page = framed(drawn(random), INSET, 3);
    const corners = looseCorners(random, WIDTH, HEIGHT, 0.9);
    const photo = photographed(random, page, {
      width: WIDTH,
      height: HEIGHT,
      corners,
      ground: 234,
      noise: 4,
    });
    const quad = (by: number): Quad => [
      [by, by],
      [page.width - by, by],
      [page.width - by, page.height - by],
      [by, page.height - by],
    ];
    const there = homographyBetween(quad(0), corners);
    const real = quad(INSET).map((corner) => (there ? apply(there, corner) : corner));
    const found = proposeCorners(greyFrom(photo));
    expect(found?.of, `seed ${SEED}`).toBe("frame");
    expect(found && error(found.corners, real)).toBeLessThan(0.5);
  });

  test("yields to the edge of the page around it", () => {
    const random = seededRandom(SEED);
    const corners = looseCorners(random, WIDTH, HEIGHT, 0.8);
    const page = framed(drawn(random), INSET, 3);
    const photo = { width: WIDTH, height: HEIGHT, corners, ground: 80, noise: 3 };
    const found = proposeCorners(greyFrom(photographed(random, page, photo)));
    expect(found?.of).toBe("page");
    expect(found && error(found.corners, corners)).toBeLessThan(0.5);
  });
});

describe("nothing is proposed", () => {
  test.each(ROUNDS)("for a scan of a drawing without a frame (page %i)", (round) => {
    expect(proposeCorners(greyFrom(drawn(seededRandom(SEED * 1000 + round))))).toBeNull();
  });

  test("for long lines that run on past where they cross", () => {
    const ruled = sheet(400, 300);
    for (const x of [40, 357]) box(ruled, x, 0, x + 2, 299);
    for (const y of [30, 266]) box(ruled, 0, y, 399, y + 2);
    expect(proposeCorners(greyFrom(ruled))).toBeNull();
    const framedSo = sheet(400, 300);
    for (const x of [40, 357]) box(framedSo, x, 30, x + 2, 268);
    for (const y of [30, 266]) box(framedSo, 40, y, 359, y + 2);
    expect(proposeCorners(greyFrom(framedSo))?.of).toBe("frame");
  });

  const plain = (width: number, height: number, value: number): Grey => {
    const grey = greyOf(width, height);
    grey.data.fill(value);
    return grey;
  };
  test.each([
    ["one pixel", plain(1, 1, 0)],
    ["two pixels", plain(2, 1, 255)],
    ["no pixels", plain(0, 0, 0)],
    ["all white", plain(300, 200, 255)],
    ["all black", plain(300, 200, 0)],
    ["a strip", plain(2000, 3, 128)],
  ])("for %s, and nothing is thrown", (_, grey) => {
    expect(proposeCorners(grey)).toBeNull();
    const corner: Point = [0, 0];
    expect(bowNear(grey, [corner, corner, corner, corner])).toBeNull();
  });

  test("for noise alone", () => {
    const random = seededRandom(SEED);
    const grey = greyOf(300, 200);
    for (let at = 0; at < grey.data.length; at++) grey.data[at] = random.below(256);
    expect(proposeCorners(grey)).toBeNull();
  });
});
