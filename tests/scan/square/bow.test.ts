import { describe, expect, test } from "vitest";
import { type Point, seededRandom } from "../../../src/base/index.ts";
import { bowed, bowIn, straightened } from "../../../src/scan/square/bow.ts";
import { fitBow } from "../../../src/scan/square/bow-fit.ts";

const [WIDTH, HEIGHT] = [3000, 2000];

/** Points along the sides of a page, moved by a lens, each found with some scatter. */
function sides(lens: (point: Point) => Point, scatter: number, seed = 1): Point[][] {
  const random = seededRandom(seed);
  const corners: readonly Point[] = [
    [300, 250],
    [2750, 180],
    [2650, 1830],
    [350, 1780],
  ];
  return corners.map((from, side) => {
    const to = corners[(side + 1) % 4] as Point;
    return Array.from({ length: 100 }, (_, n) => {
      const share = 0.03 + (0.94 * n) / 99;
      const [x, y] = lens([
        from[0] + (to[0] - from[0]) * share,
        from[1] + (to[1] - from[1]) * share,
      ]);
      const off = () => scatter * (random.next() + random.next() + random.next() - 1.5) * 2;
      return [x + off(), y + off()];
    });
  });
}

/** D. C. Brown's first radial term: seen at r (1 + k1 r^2), r in halves of the diagonal. */
const brown =
  (k1: number) =>
  ([x, y]: Point): Point => {
    const { middle, unit } = bowIn(WIDTH, HEIGHT, 0);
    const [dx, dy] = [x - middle[0], y - middle[1]];
    const by = 1 + (k1 * (dx * dx + dy * dy)) / unit ** 2;
    return [middle[0] + dx * by, middle[1] + dy * by];
  };

describe("the bow of a lens", () => {
  test("is undone by its way back", () => {
    for (const k of [-0.3, -0.05, 0.05, 0.2]) {
      const bow = bowIn(WIDTH, HEIGHT, k);
      for (const point of [
        [0, 0],
        [2999, 1999],
        [1499.5, 999.5],
        [700, 1500],
      ] as const) {
        const [x, y] = straightened(bow, bowed(bow, point));
        expect(x).toBeCloseTo(point[0], 6);
        expect(y).toBeCloseTo(point[1], 6);
      }
    }
  });

  test.each([-0.2, -0.08, -0.02, 0.03, 0.1])("of the model itself is found: k = %f", (k) => {
    const found = fitBow(
      sides((p) => bowed(bowIn(WIDTH, HEIGHT, k), p), 0.3),
      WIDTH,
      HEIGHT,
    );
    expect(Math.abs((found?.k ?? 0) - k)).toBeLessThan(0.001);
  });

  test.each([-0.1, -0.05, -0.02, 0.05])("of Brown's model is found and undone: k1 = %f", (k1) => {
    const seen = sides(brown(k1), 0);
    const bow = fitBow(seen, WIDTH, HEIGHT);
    // Equal for small ones: the two models part by terms in k1 squared.
    expect(Math.abs((bow?.k ?? 0) / k1 - 1)).toBeLessThan(4 * Math.abs(k1));
    for (const side of seen) {
      const straight = bow ? side.map((point) => straightened(bow, point)) : side;
      expect(sagittaOf(straight)).toBeLessThan(0.08 * sagittaOf(side) + 0.05);
    }
  });

  test("is null for straight sides, however scattered", () => {
    for (let seed = 1; seed <= 40; seed++) {
      for (const scatter of [0, 0.3, 1.5]) {
        expect(
          fitBow(
            sides((p) => p, scatter, seed),
            WIDTH,
            HEIGHT,
          ),
        ).toBeNull();
      }
    }
  });

  test("is null for curled paper: both long edges bowed the same way", () => {
    const curled = sides(([x, y]) => [x, y + 40 * Math.sin((Math.PI * (x - 300)) / 2400)], 0.3);
    expect(fitBow(curled, WIDTH, HEIGHT)).toBeNull();
  });

  test("is null for one curved side and for no sides", () => {
    const bent = sides((p) => p, 0.2);
    bent[0] = (bent[0] as Point[]).map(([x, y]) => [
      x,
      y - 25 * Math.sin(((x - 300) / 2450) * Math.PI),
    ]);
    expect(fitBow(bent, WIDTH, HEIGHT)).toBeNull();
    expect(fitBow([], WIDTH, HEIGHT)).toBeNull();
    expect(fitBow([[], [], [], []], WIDTH, HEIGHT)).toBeNull();
  });
});

/** How far the middle of a side lies off the line between its ends. */
function sagittaOf(side: readonly Point[]): number {
  const [a, b] = [side[0] as Point, side[side.length - 1] as Point];
  const [x, y] = side[side.length >> 1] as Point;
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  return Math.abs((x - a[0]) * dy - (y - a[1]) * dx) / Math.hypot(dx, dy);
}
