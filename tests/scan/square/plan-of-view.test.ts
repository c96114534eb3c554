import fc from "fast-check";
import { expect, test } from "vitest";
import "../../support/seed.ts";
import type { Point } from "../../../src/base/index.ts";
import { greyOf } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { bowIn } from "../../../src/scan/square/bow.ts";
import { planOfView } from "../../../src/scan/square/plan-of-view.ts";
import { warp } from "../../../src/scan/square/square-up.ts";
import { NOT_SQUARED, planOf, toPicture } from "../../../src/scan/square/squaring.ts";

const SIZE = { width: 900, height: 700 };

const plan = planOf(
  {
    ...NOT_SQUARED,
    bow: bowIn(SIZE.width, SIZE.height, -0.03),
    corners: [
      [80, 60],
      [850, 110],
      [800, 640],
      [60, 600],
    ],
    level: 1.5,
    quarters: 1,
  },
  SIZE,
);
if (!plan) throw new Error("no page");

test("a view's pixels come from where those of the whole result come from", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 300 }),
      fc.integer({ min: 0, max: 300 }),
      fc.double({ min: 0.1, max: 3, noNaN: true }),
      fc.double({ min: 0.1, max: 2, noNaN: true }),
      (left, top, scale, shrunk) => {
        const box = { left, top, right: left + 199, bottom: top + 149 };
        const cut = { left: 20, top: 35, scale: shrunk };
        const view = planOfView(plan, { box, scale }, cut);
        for (const [x, y] of [
          [0, 0],
          [view.width - 1, view.height - 1],
          [3, view.height / 2],
        ] as const) {
          const whole: Point = [
            (x + 0.5) / scale - 0.5 + box.left,
            (y + 0.5) / scale - 0.5 + box.top,
          ];
          const [u, v] = toPicture(plan, whole);
          const [seenX, seenY] = toPicture(view, [x, y]);
          expect(seenX).toBeCloseTo((u + 0.5 - cut.left) * shrunk - 0.5, 5);
          expect(seenY).toBeCloseTo((v + 0.5 - cut.top) * shrunk - 0.5, 5);
        }
      },
    ),
  );
});

test("a close look at a part of a result shows the very pixels that the whole has there", () => {
  const picture = greyOf(SIZE.width, SIZE.height);
  for (let at = 0; at < picture.data.length; at++) picture.data[at] = (at * 7919) % 251;
  const whole = finished(warp(picture, plan));
  const box = { left: 100, top: 150, right: 179, bottom: 209 };
  const part = finished(
    warp(picture, planOfView(plan, { box, scale: 1 }, { left: 0, top: 0, scale: 1 })),
  );
  expect([part.width, part.height]).toEqual([80, 60]);
  for (let y = 0; y < part.height; y++) {
    for (let x = 0; x < part.width; x++) {
      const there = whole.data[(y + box.top) * whole.width + x + box.left] as number;
      // Places are counted in 256ths of a pixel, and rounding may fall either way.
      expect(Math.abs((part.data[y * part.width + x] as number) - there)).toBeLessThanOrEqual(2);
    }
  }
});
