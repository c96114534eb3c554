import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Point } from "../../src/base/index.ts";
import { apply, homographyBetween, type Quad } from "../../src/scan/homography.ts";

describe("the homography between four corners and four", () => {
  /**
   * By hand, (0,0) (2,0) (2,2) (0,2) to (1,2) (2.5,2) (2.5,5) (1,8):
   *   (0,0):  c = 1, f = 2.
   *   (0,2):  2b + c = 1 (2h + 1), so b = h;   2e + f = 8 (2h + 1), so e = 3 + 8h.
   *   (2,0):  2a + c = 2.5 (2g + 1), so a = 0.75 + 2.5g;   2d + f = 2 (2g + 1), so d = 2g.
   *   (2,2):  2a + 2b + c = 2.5 (2g + 2h + 1):  1.5 + 5g + 2h + 1 = 2.5 + 5g + 5h, so h = 0, b = 0, e = 3.
   *           2d + 2e + f = 5 (2g + 2h + 1):  4g + 6 + 2 = 10g + 5, so g = 0.5, a = 2, d = 1.
   * The middle (1,1): w = 0.5 + 1 = 1.5, x = (2 + 1) / 1.5 = 2, y = (1 + 3 + 2) / 1.5 = 4.
   */
  test("is the one computed by hand", () => {
    const from: Quad = [
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ];
    const to: Quad = [
      [1, 2],
      [2.5, 2],
      [2.5, 5],
      [1, 8],
    ];
    const found = homographyBetween(from, to);
    const expected = [2, 0, 1, 1, 3, 2, 0.5, 0];
    expect(found).toHaveLength(8);
    expected.forEach((value, at) => {
      expect(found?.[at]).toBeCloseTo(value, 12);
    });
    const middle = found && apply(found, [1, 1]);
    expect(middle?.[0]).toBeCloseTo(2, 12);
    expect(middle?.[1]).toBeCloseTo(4, 12);
  });

  test("leads back by the one the other way", () => {
    const near = fc.double({ min: -0.2, max: 0.2, noNaN: true });
    const offsets = fc.array(near, { minLength: 8, maxLength: 8 });
    const inside = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(offsets, inside, inside, (off, x, y) => {
        const square: Quad = [
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 1],
        ];
        const loose = square.map(([px, py], n) => [
          px + (off[2 * n] as number),
          py + (off[2 * n + 1] as number),
        ]) as unknown as Quad;
        const there = homographyBetween(square, loose);
        const back = homographyBetween(loose, square);
        if (!there || !back) return;
        const [u, v] = apply(back, apply(there, [x, y]));
        expect(u).toBeCloseTo(x, 6);
        expect(v).toBeCloseTo(y, 6);
      }),
    );
  });

  test("does not exist where three corners lie on a line", () => {
    const square: Quad = [
      [0, 0],
      [9, 0],
      [9, 9],
      [0, 9],
    ];
    const flat: Quad = [
      [0, 0],
      [4, 0],
      [9, 0],
      [0, 9],
    ] as unknown as Quad;
    const point: Point = [3, 3];
    expect(homographyBetween(square, flat)).toBeNull();
    expect(homographyBetween(flat, square)).toBeNull();
    expect(homographyBetween([point, point, point, point], square)).toBeNull();
  });
});
