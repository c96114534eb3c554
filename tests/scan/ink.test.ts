import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { inking } from "../../src/scan/ink.ts";
import { type Grey, greyOf } from "../../src/scan/raster.ts";
import { finished } from "../../src/scan/sliced.ts";

/** Of a page of black ink on white paper: what is half as dark is ink, what is three tenths may be. */
const KNOWN = Uint32Array.from({ length: 256 }, (_, light) =>
  light === 0 ? 100 : light === 255 ? 900 : 0,
);
const [SURE, FAINT] = [127, 178];

function scattered(width: number, height: number, seed: number): Grey {
  const random = seededRandom(seed);
  const grey = greyOf(width, height);
  for (let at = 0; at < grey.data.length; at++) {
    grey.data[at] = random.pick([0, SURE, SURE + 1, FAINT, FAINT, FAINT + 1, 255, 255, 255]);
  }
  return grey;
}

/** Pixel by pixel: faint ones beside ink until there are none; none beside ink on the picture's own edge. */
function inkOf({ width, height, data }: Grey): number[] {
  const ink = [...data].map((light) => (light <= SURE ? 1 : 0));
  const isInner = (x: number, y: number) => x > 0 && y > 0 && x < width - 1 && y < height - 1;
  for (let isMore = true; isMore; ) {
    isMore = false;
    for (let at = 0; at < ink.length; at++) {
      if (ink[at] === 1 || (data[at] as number) > FAINT) continue;
      const [x, y] = [at % width, Math.floor(at / width)];
      for (let n = 0; n < 9; n++) {
        const [besideX, besideY] = [x + (n % 3) - 1, y + Math.floor(n / 3) - 1];
        if (!isInner(besideX, besideY) || ink[besideY * width + besideX] !== 1) continue;
        ink[at] = 1;
        isMore = true;
        break;
      }
    }
  }
  return ink;
}

test.each([
  [1, 4],
  [2, 9],
  [31, 6],
  [32, 6],
  [33, 6],
  [64, 8],
  [97, 12],
])(
  "ink of %i by %i pixels is what is dark, and what is fainter and hangs on it",
  (width, height) => {
    for (let seed = 0; seed < 20; seed++) {
      const grey = scattered(width, height, seed);
      expect([...finished(inking(grey, KNOWN)).data], `seed ${seed}`).toEqual(inkOf(grey));
    }
  },
);
