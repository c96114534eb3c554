import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { type Bits, bitsFromText, bitsOf, textFromBits } from "../../src/scan/raster.ts";
import { thin } from "../../src/scan/thinning.ts";

/** Zhang and Suen, CACM 27(3) 1984, pp. 236-239, as the public worked example (Rosetta Code task). */
const IN = [
  "                               ",
  "#########       ########       ",
  "###   ####     ####  ####      ",
  "###    ###     ###    ###      ",
  "###   ####     ###             ",
  "#########      ###             ",
  "### ####       ###    ###      ",
  "###  ####  ### ####  #### ###  ",
  "###   #### ###  ########  ###  ",
  "                               ",
];
const OUT = [
  "                               ",
  "########         ######        ",
  "#      #        ##             ",
  "#       #       #              ",
  "#      #        #              ",
  "###### #        #              ",
  "#     ##        #              ",
  "#      #    #   ##    ##   #   ",
  "#       #         ####         ",
  "                               ",
];

describe("thinning", () => {
  test("gives the published example", () => {
    expect(textFromBits(thin(bitsFromText(IN)))).toEqual(OUT);
  });

  test("leaves the same as looking at every pixel in every pass", () => {
    const seed = Number(process.env.PINTRUTH_SEED ?? 1);
    const random = seededRandom(seed);
    for (let round = 0; round < 60; round++) {
      const bits = blobs(random.below, 40, 30);
      expect(textFromBits(thin(bits)), `seed ${seed}, round ${round}`).toEqual(
        textFromBits(slowly(bits)),
      );
    }
  });
});

function blobs(below: (bound: number) => number, width: number, height: number): Bits {
  const bits = bitsOf(width, height);
  for (let n = 0; n < 9; n++) {
    const [left, top] = [below(width), below(height)];
    const [wide, high] = n % 2 === 0 ? [below(25), 1 + below(5)] : [1 + below(5), below(20)];
    for (let y = top; y < Math.min(height, top + high); y++) {
      for (let x = left; x < Math.min(width, left + wide); x++) bits.data[y * width + x] = 1;
    }
  }
  return bits;
}

/** The paper's text word for word: every pixel, every pass, until a round changes nothing. */
function slowly({ width, height, data }: Bits): Bits {
  const ink = data.slice();
  const at = (x: number, y: number) => ink[y * width + x] as number;
  for (let isChanged = true; isChanged; ) {
    isChanged = false;
    for (const isFirst of [true, false]) {
      const gone: number[] = [];
      for (let y = 1; y < height - 1; y++) {
        for (let x = 1; x < width - 1; x++) {
          if (!at(x, y)) continue;
          const [p2, p3, p4, p5] = [at(x, y - 1), at(x + 1, y - 1), at(x + 1, y), at(x + 1, y + 1)];
          const [p6, p7, p8, p9] = [at(x, y + 1), at(x - 1, y + 1), at(x - 1, y), at(x - 1, y - 1)];
          const ring = [p2, p3, p4, p5, p6, p7, p8, p9];
          const count = ring.reduce((sum, one) => sum + one, 0);
          const rises = ring.filter((one, k) => one === 0 && ring[(k + 1) % 8] === 1).length;
          const opens = isFirst
            ? p2 * p4 * p6 === 0 && p4 * p6 * p8 === 0
            : p2 * p4 * p8 === 0 && p2 * p6 * p8 === 0;
          if (count >= 2 && count <= 6 && rises === 1 && opens) gone.push(y * width + x);
        }
      }
      for (const one of gone) ink[one] = 0;
      isChanged ||= gone.length > 0;
    }
  }
  return { width, height, data: ink };
}
