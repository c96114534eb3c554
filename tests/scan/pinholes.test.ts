import { expect, test } from "vitest";
import { packed } from "../../src/scan/packed-bits.ts";
import { fillPinholes } from "../../src/scan/pinholes.ts";
import { bitsOf } from "../../src/scan/raster.ts";
import { finished } from "../../src/scan/sliced.ts";

const WIDTH = 60;
const LINE = 5;
const ROW = 20;

/** A line across, with paper where asked: left, top, wide, high. */
function filled(...holes: readonly (readonly [number, number, number, number])[]) {
  const ink = bitsOf(WIDTH, 40);
  for (let y = ROW; y < ROW + LINE; y++) ink.data.fill(1, y * WIDTH + 5, y * WIDTH + 55);
  // A ring as a letter has, its middle wider than the line.
  for (let y = 2; y < 16; y++) ink.data.fill(1, y * WIDTH + 30, y * WIDTH + 44);
  for (const [left, top, wide, high] of [[33, 5, 8, 8] as const, ...holes]) {
    for (let y = top; y < top + high; y++)
      ink.data.fill(0, y * WIDTH + left, y * WIDTH + left + wide);
  }
  finished(fillPinholes({ bits: ink, packed: finished(packed(ink)) }));
  return (x: number, y: number) => ink.data[y * WIDTH + x] === 1;
}

test("a white speck in a line is filled, a letter's middle is not", () => {
  const isInk = filled([20, ROW + 1, 3, 3]);
  expect(isInk(21, ROW + 2)).toBe(true);
  expect(isInk(37, 9)).toBe(false);
});

test("what is open to a side is no speck", () => {
  const isInk = filled([20, ROW + 1, 3, LINE - 1]);
  expect(isInk(21, ROW + 2)).toBe(false);
});
