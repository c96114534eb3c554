import { describe, expect, test } from "vitest";
import { type Bits, bitsOf, greyOf } from "../../../src/scan/raster.ts";
import { bridgeIn } from "../../../src/scan/words/bridge.ts";

const [WIDTH, HEIGHT] = [80, 80];
const TALL = 20;
const STROKE = 3;
const REACH = 3;

/** A page with a line over these columns and rows, both ends inside. */
function lineOver(left: number, right: number, top: number, bottom: number): Bits {
  const lines = bitsOf(WIDTH, HEIGHT);
  for (let y = top; y <= bottom; y++) lines.data.fill(1, y * WIDTH + left, y * WIDTH + right + 1);
  return lines;
}

/** A level row of letters 20 pixels tall, each from one column to another, and what is kept of a line. */
function keptIn(letters: readonly (readonly [number, number])[], lines: Bits) {
  const glyphs = letters.map(([left, right], n) => {
    return { left, right, top: 20, bottom: 39, area: 50, numbers: [n] };
  });
  const bridge = bridgeIn({ way: "level", glyphs }, TALL, STROKE, REACH);
  const source = { flat: greyOf(WIDTH, HEIGHT), labels: new Int32Array(WIDTH * HEIGHT), lines };
  const isKept = (x: number, y: number) =>
    lines.data[y * WIDTH + x] === 1 && bridge.has(source, x, y);
  const all = Array.from({ length: WIDTH }, (_, n) => n);
  return {
    downAt: (x: number) => all.filter((y) => isKept(x, y)),
    acrossAt: (y: number) => all.filter((x) => isKept(x, y)),
  };
}

describe("what is kept of a line in a word", () => {
  const level = lineOver(0, WIDTH - 1, 26, 30);

  test("inside a letter as much as a stroke is wide, in the middle of the line, and none beyond it", () => {
    const kept = keptIn([[10, 22]], level);
    expect(kept.downAt(15)).toEqual([27, 28, 29]);
    expect(kept.acrossAt(28)).toEqual([10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22]);
  });

  test("between two stems that may be one letter, not between letters", () => {
    const stems = (second: number) =>
      keptIn(
        [
          [10, 12],
          [second, second + 2],
        ],
        level,
      ).acrossAt(28);
    expect(stems(20)).toContain(16);
    expect(stems(30)).not.toContain(16);
    const wide = keptIn(
      [
        [10, 19],
        [22, 31],
      ],
      level,
    );
    expect(wide.acrossAt(28)).not.toContain(20);
  });

  test("right at the feet of letters, and right beside them", () => {
    expect(keptIn([[10, 22]], lineOver(0, WIDTH - 1, 40, 44)).downAt(15)).toEqual([41, 42]);
    expect(keptIn([[10, 22]], lineOver(0, WIDTH - 1, 44, 48)).downAt(15)).toEqual([]);
    const beside = keptIn([[10, 22]], lineOver(5, 9, 0, HEIGHT - 1));
    expect(beside.acrossAt(30)).toEqual([7, 8]);
    // Of an upright line nothing at the feet.
    expect(beside.acrossAt(41)).toEqual([]);
  });
});
