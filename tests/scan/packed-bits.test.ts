import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { packed, placesIn, put, take, unpacked } from "../../src/scan/packed-bits.ts";
import { type Bits, bitsOf } from "../../src/scan/raster.ts";
import { finished } from "../../src/scan/sliced.ts";

function scattered(width: number, height: number, seed: number): Bits {
  const random = seededRandom(seed);
  const bits = bitsOf(width, height);
  for (let at = 0; at < bits.data.length; at++) bits.data[at] = random.chance(0.4) ? 1 : 0;
  return bits;
}

/** Narrower than a number, as wide, a pixel wider, and where rows begin askew in memory. */
const SIZES = [
  [1, 5],
  [31, 4],
  [32, 4],
  [33, 7],
  [101, 9],
] as const;

test.each(SIZES)("a picture of %i by %i is packed and unpacked", (width, height) => {
  const bits = scattered(width, height, width);
  const picture = finished(packed(bits));
  expect(finished(unpacked(picture))).toEqual(bits);
  const places = [...bits.data.keys()].filter((at) => bits.data[at] === 1);
  expect([...finished(placesIn(picture))]).toEqual(places);
});

test("one pixel is put and taken", () => {
  const picture = finished(packed(bitsOf(70, 3)));
  put(picture, 70 + 63);
  put(picture, 2 * 70 + 64);
  expect([...finished(placesIn(picture))]).toEqual([133, 204]);
  take(picture, 133);
  expect([...finished(placesIn(picture))]).toEqual([204]);
});
