import { describe, expect, test } from "vitest";
import { type Box, seededRandom } from "../../src/base/index.ts";
import { crowdOn } from "../../src/scan/crowded-page.ts";
import { CrowdedPage, traceLines } from "../../src/scan/index.ts";
import type { PreparedPage } from "../../src/scan/lines/prepared-page.ts";
import { placesOf } from "../../src/scan/lines/skeleton.ts";
import { bitsOf } from "../../src/scan/raster.ts";
import { finished } from "../../src/scan/sliced.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
/** So many ends and forks a page may have. */
const MOST = 50_000;
const PITCH = 5;

/** Thinned lines up and down and across, every five pixels: so many of each. */
function lattice(across: number, down: number) {
  const thinned = bitsOf(PITCH * (across + 1), PITCH * (down + 1));
  const { width, data } = thinned;
  for (let y = PITCH; y <= PITCH * down; y++)
    for (let x = PITCH; x <= PITCH * across; x++)
      if (x % PITCH === 0 || y % PITCH === 0) data[y * width + x] = 1;
  return { thinned, places: finished(placesOf(thinned)) };
}

const crowd = (page: ReturnType<typeof lattice>, boxes: readonly Box[] = []) =>
  finished(crowdOn(page, boxes));

describe("how full a page is of lines", () => {
  test("as many crossings as can be followed are not too many, and a row more is", () => {
    // at its four corners a line turns, and forks nowhere
    expect(crowd(lattice(250, 200))).toBe(0);
    expect(crowd(lattice(250, 201))).toBe((250 * 201 - 4) / MOST);
  });

  test("what lies in boxes of parts and words is not counted, be it in two", () => {
    const page = lattice(300, 300);
    const { width, height } = page.thinned;
    const upper = { left: -9, top: -9, right: width + 9, bottom: height / 2 };
    expect(crowd(page, [upper])).toBe(0);
    expect(crowd(page, [upper, upper, { ...upper, top: 30 }])).toBe(0);
    expect(crowd(page, [{ left: 7, top: 7, right: 8, bottom: 8 }])).toBe(crowd(page));
  });

  test("any boxes: as many as are counted pixel by pixel", () => {
    const random = seededRandom(SEED);
    const page = lattice(300, 300);
    const { width, height } = page.thinned;
    for (let round = 0; round < 5; round++) {
      const boxes = Array.from({ length: 40 }, (): Box => {
        const [left, top] = [random.below(width), random.below(height)];
        return { left, top, right: left + random.below(150), bottom: top + random.below(150) };
      });
      const isIn = (x: number, y: number) =>
        boxes.some((box) => {
          return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
        });
      let marks = 0;
      for (let row = 1; row <= 300; row++)
        for (let column = 1; column <= 300; column++) {
          const isCorner = [1, 300].includes(row) && [1, 300].includes(column);
          if (!isCorner && !isIn(column * PITCH, row * PITCH)) marks++;
        }
      expect(crowd(page, boxes), `PINTRUTH_SEED=${SEED}`).toBe(marks > MOST ? marks / MOST : 0);
    }
  });

  test("a page that is too full is refused with how much so and what to do, before it is followed", () => {
    const page = { ...lattice(400, 400), scale: 1, lineWidth: 2 } as PreparedPage;
    const refused = () =>
      finished(traceLines(page, { parts: [], words: [], answers: [] }, {}, "all"));
    expect(refused).toThrow(CrowdedPage);
    expect(refused).toThrow(
      /^There are about 3 times as many lines .* crop it .* clean it .* grids/,
    );
  });
});
