import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sauvola } from "../../../src/scan/clean/adaptive-threshold.ts";
import { type Grey, greyOf } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";

/** The paper's formula word for word, every window summed anew. */
function slowly({ width, height, data }: Grey, window: number, k: number): number[] {
  const reach = Math.max(1, Math.floor(window / 2));
  return Array.from(data, (value, at) => {
    const [x, y] = [at % width, Math.floor(at / width)];
    const inside: number[] = [];
    for (let row = Math.max(0, y - reach); row <= Math.min(height - 1, y + reach); row++) {
      for (
        let column = Math.max(0, x - reach);
        column <= Math.min(width - 1, x + reach);
        column++
      ) {
        inside.push(data[row * width + column] as number);
      }
    }
    const mean = inside.reduce((sum, one) => sum + one, 0) / inside.length;
    const square = inside.reduce((sum, one) => sum + one * one, 0) / inside.length;
    const deviation = Math.sqrt(Math.max(0, square - mean * mean));
    return value <= mean * (1 + k * (deviation / 128 - 1)) ? 1 : 0;
  });
}

describe("the adaptive threshold", () => {
  test("is that of summing every window anew", () => {
    const picture = fc
      .tuple(fc.integer({ min: 1, max: 24 }), fc.integer({ min: 1, max: 24 }))
      .chain(([width, height]) =>
        fc
          .uint8Array({ minLength: width * height, maxLength: width * height })
          .map((data): Grey => ({ width, height, data })),
      );
    const window = fc.integer({ min: 1, max: 31 });
    const k = fc.constantFrom(0.05, 0.2, 0.34, 0.5);
    fc.assert(
      fc.property(picture, window, k, (grey, size, strength) => {
        expect([...finished(sauvola(grey, size, strength)).data]).toEqual(
          slowly(grey, size, strength),
        );
      }),
    );
  });

  test("is the same in one band and in many", () => {
    // Wider than a band has pixels over eight rows: bands of a few rows, windows over several.
    const grey = greyOf(100_000, 24);
    for (let at = 0; at < grey.data.length; at++) grey.data[at] = (at * 7919 + (at >> 9)) % 256;
    const bits = finished(sauvola(grey, 15, 0.3));
    const crop = (from: Uint8Array) =>
      Array.from({ length: 24 }, (_, y) => [...from.slice(y * 100_000, y * 100_000 + 40)]);
    const narrow = greyOf(60, 24);
    for (let y = 0; y < 24; y++) {
      narrow.data.set(grey.data.subarray(y * 100_000, y * 100_000 + 60), y * 60);
    }
    const expected = slowly(narrow, 15, 0.3);
    expect(crop(bits.data)).toEqual(
      Array.from({ length: 24 }, (_, y) => expected.slice(y * 60, y * 60 + 40)),
    );
  });

  test("finds a line in deep shadow and none on bare paper", () => {
    const grey = greyOf(200, 100);
    for (let at = 0; at < grey.data.length; at++) {
      const [x, y] = [at % 200, Math.floor(at / 200)];
      const light = 1 - (0.75 * x) / 200;
      grey.data[at] = (y >= 49 && y <= 51 ? 60 : 230) * light + ((at * 31) % 5);
    }
    const bits = finished(sauvola(grey, 25, 0.25));
    for (let y = 0; y < 100; y++) {
      const row = bits.data.subarray(y * 200, (y + 1) * 200).reduce((sum, one) => sum + one, 0);
      expect(row, `row ${y}`).toBe(y >= 49 && y <= 51 ? 200 : 0);
    }
  });
});
