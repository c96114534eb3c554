import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/base/index.ts";
import { seededRandom } from "../../../src/base/index.ts";
import type { Quad } from "../../../src/scan/homography.ts";
import { aspectOf } from "../../../src/scan/square/aspect.ts";

const [WIDTH, HEIGHT] = [2000, 1500];

/** A page seen by a camera with this focal length in pixels, tilted about x, then y, then z (radians). */
function seen(ratio: number, focal: number, tilt: readonly [number, number, number]): Quad {
  const [a, b, c] = tilt;
  const corner = (x: number, y: number): Point => {
    const [y1, z1] = [y * Math.cos(a), y * Math.sin(a)];
    const [x2, z2] = [x * Math.cos(b) + z1 * Math.sin(b), z1 * Math.cos(b) - x * Math.sin(b)];
    const [x3, y3] = [x2 * Math.cos(c) - y1 * Math.sin(c), x2 * Math.sin(c) + y1 * Math.cos(c)];
    const far = 4 + z2;
    return [(WIDTH - 1) / 2 + (focal * x3) / far, (HEIGHT - 1) / 2 + (focal * y3) / far];
  };
  return [corner(-ratio, -1), corner(ratio, -1), corner(ratio, 1), corner(-ratio, 1)];
}

describe("the aspect of a page", () => {
  test("and the focal length follow from a page tilted about both axes", () => {
    const random = seededRandom(Number(process.env.PINTRUTH_SEED ?? 1));
    let measured = 0;
    for (let n = 0; n < 200; n++) {
      const ratio = 0.6 + random.next();
      const focal = 1200 + 1500 * random.next();
      const tilt = () => (random.chance(0.5) ? 1 : -1) * (0.3 + 0.4 * random.next());
      const found = aspectOf(seen(ratio, focal, [tilt(), tilt(), 0.2]), WIDTH, HEIGHT);
      if (found.focal !== "measured") continue;
      measured++;
      expect(found.ratio / ratio).toBeCloseTo(1, 6);
    }
    expect(measured).toBeGreaterThan(100);
  });

  test("seen from straight above is that of the picture, whatever the camera", () => {
    const found = aspectOf(seen(Math.SQRT2, 900, [0, 0, 0.3]), WIDTH, HEIGHT);
    expect(found.ratio).toBeCloseTo(Math.SQRT2, 6);
    expect(found.focal).toBe("assumed");
  });

  test("tilted about one axis needs the focal length, and a usual one is said to be assumed", () => {
    const usual = 0.6 * Math.hypot(WIDTH, HEIGHT);
    const found = aspectOf(seen(Math.SQRT2, usual, [0.5, 0, 0]), WIDTH, HEIGHT);
    expect(found.focal).toBe("assumed");
    expect(found.ratio).toBeCloseTo(Math.SQRT2, 6);
    const other = aspectOf(seen(Math.SQRT2, 1.3 * usual, [0.5, 0, 0]), WIDTH, HEIGHT);
    expect(Math.abs(other.ratio / Math.SQRT2 - 1)).toBeLessThan(0.08);
  });

  test("is 1 for what is no page", () => {
    const point: Point = [5, 5];
    expect(aspectOf([point, point, point, point], WIDTH, HEIGHT)).toEqual({
      ratio: 1,
      focal: "assumed",
    });
  });
});
