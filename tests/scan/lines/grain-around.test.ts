import { describe, expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { grainAround, isRoughAround } from "../../../src/scan/lines/grain-around.ts";
import type { PreparedPage } from "../../../src/scan/lines/prepared-page.ts";
import { bitsOf, greyOf } from "../../../src/scan/raster.ts";

const SIZE = 200;
/** Tones of 255 by which a line is darker than its paper. */
const CONTRAST = 100;
const BARE = 40;

/** Paper whose pixels vary by chance, evenly by so much either way. */
function paper(most: number, isInk: (x: number, y: number) => boolean = () => false): PreparedPage {
  const random = seededRandom(7);
  const flat = greyOf(SIZE, SIZE);
  const ink = bitsOf(SIZE, SIZE);
  for (let at = 0; at < flat.data.length; at++) {
    const inked = isInk(at % SIZE, Math.floor(at / SIZE));
    flat.data[at] = inked ? 0 : Math.round(255 - BARE + most * (2 * random.next() - 1));
    ink.data[at] = inked ? 1 : 0;
  }
  const full = BARE + CONTRAST;
  const none = new Int32Array();
  return {
    scale: 1,
    flat,
    ink,
    full,
    bare: BARE,
    lineWidth: 4,
    spread: 0,
    thinned: ink,
    places: none,
    far: ink.data,
  };
}

describe("grain round a place, as a share of a line's darkness", () => {
  // Chance even from -a to a deviates by a over the root of 3, the mean of nine such by a third of that.
  test.each([6, 18, 36])("pixels that vary by %d tones", (most) => {
    const deviation = most / Math.sqrt(3) / 3 / CONTRAST;
    const found = grainAround(paper(most), [100, 100]);
    expect(found).toBeGreaterThan(0.8 * deviation);
    expect(found).toBeLessThan(1.2 * deviation);
  });

  test("ink is no grain", () => {
    const lined = paper(6, (x, y) => x % 20 < 4 || y % 20 < 4);
    expect(grainAround(lined, [100, 100])).toBeLessThan(0.02);
  });

  test("where nearly all looks like ink, no line can be told", () => {
    const black = paper(36, () => true);
    expect(grainAround(black, [100, 100])).toBe(Number.POSITIVE_INFINITY);
    expect(isRoughAround(black, [100, 100])).toBe(true);
  });

  test("near the corner of the picture less paper is enough", () => {
    expect(grainAround(paper(36), [0, 0])).toBeGreaterThan(0);
  });
});
