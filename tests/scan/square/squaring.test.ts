import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/base/index.ts";
import { type Grey, greyOf, type Rgba } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { bowIn } from "../../../src/scan/square/bow.ts";
import { squareUp } from "../../../src/scan/square/square-up.ts";
import {
  levelOf,
  NOT_SQUARED,
  planOf,
  type Squaring,
  toPicture,
  toResult,
} from "../../../src/scan/square/squaring.ts";

const PICTURE: Grey = { width: 3, height: 2, data: Uint8Array.from([1, 2, 3, 4, 5, 6]) };

const squared = (change: Partial<Squaring>, picture: Grey = PICTURE) => {
  const result = finished(squareUp(picture, { ...NOT_SQUARED, ...change }));
  if (!result) throw new Error("no page");
  return Array.from({ length: result.height }, (_, y) => [
    ...result.data.slice(y * result.width, (y + 1) * result.width),
  ]);
};

describe("squaring up moves pixels and never changes them:", () => {
  test("not at all when nothing is set", () => {
    expect(squared({})).toEqual([
      [1, 2, 3],
      [4, 5, 6],
    ]);
  });

  test("a quarter turn clockwise", () => {
    expect(squared({ quarters: 1 })).toEqual([
      [4, 1],
      [5, 2],
      [6, 3],
    ]);
  });

  test("half a turn, and three quarters", () => {
    expect(squared({ quarters: 2 })).toEqual([
      [6, 5, 4],
      [3, 2, 1],
    ]);
    expect(squared({ quarters: 3 })).toEqual([
      [3, 6],
      [2, 5],
      [1, 4],
    ]);
  });

  test("mirrored, and mirrored after a quarter turn", () => {
    expect(squared({ isMirrored: true })).toEqual([
      [3, 2, 1],
      [6, 5, 4],
    ]);
    expect(squared({ isMirrored: true, quarters: 1 })).toEqual([
      [1, 4],
      [2, 5],
      [3, 6],
    ]);
  });

  test("cropped, in pixels of the turned result, and never to nothing", () => {
    const crop = { left: 1, top: 0, right: 2, bottom: 0 };
    expect(squared({ crop })).toEqual([[2, 3]]);
    expect(squared({ crop: { left: 0, top: 1, right: 9, bottom: 9 }, quarters: 1 })).toEqual([
      [5, 2],
      [6, 3],
    ]);
    expect(squared({ crop: { left: 90, top: 90, right: 99, bottom: 99 } })).toEqual([[6]]);
  });

  test("cut to a rectangle of corners, with a margin and white beyond the picture", () => {
    const corners = [
      [0.5, -0.5],
      [2.5, -0.5],
      [2.5, 1.5],
      [0.5, 1.5],
    ] as const;
    expect(squared({ corners })).toEqual([
      [2, 3],
      [5, 6],
    ]);
    expect(squared({ corners, margin: 1 })).toEqual([
      [255, 255, 255, 255],
      [1, 2, 3, 255],
      [4, 5, 6, 255],
      [255, 255, 255, 255],
    ]);
  });

  test("turned by corners that begin elsewhere", () => {
    const corners = [
      [2.5, -0.5],
      [2.5, 1.5],
      [-0.5, 1.5],
      [-0.5, -0.5],
    ] as const;
    expect(squared({ corners })).toEqual(squared({ quarters: 3 }));
  });
});

describe("straightening by a line", () => {
  test("turns it level or upright, whichever is nearer", () => {
    expect(levelOf([0, 0], [10, 0])).toBe(0);
    expect(levelOf([0, 0], [100, 100 * Math.tan(Math.PI / 60)])).toBeCloseTo(-3, 9);
    expect(levelOf([100, 100 * Math.tan(Math.PI / 60)], [0, 0])).toBeCloseTo(-3, 9);
    expect(levelOf([0, 0], [100 * Math.tan(Math.PI / 60), 100])).toBeCloseTo(3, 9);
    expect(levelOf([5, 5], [5, 5])).toBe(0);
  });

  test("puts both ends of the line on one row of the result", () => {
    const [a, b]: [Point, Point] = [
      [40, 70],
      [350, 82],
    ];
    const size = { width: 400, height: 300 };
    const plan = planOf({ ...NOT_SQUARED, level: levelOf(a, b) }, size);
    if (!plan) throw new Error("no page");
    const [left, right] = [toResult(plan, a), toResult(plan, b)];
    expect(left?.[1]).toBeCloseTo(right?.[1] ?? Number.NaN, 6);
  });
});

test("places lead from the picture to the result and back, all corrections at once", () => {
  const squaring: Squaring = {
    bow: bowIn(800, 600, -0.08),
    corners: [
      [60, 40],
      [720, 80],
      [760, 570],
      [30, 540],
    ],
    margin: 7,
    level: 2.5,
    quarters: 3,
    isMirrored: true,
    crop: { left: 20, top: 30, right: 300, bottom: 400 },
  };
  const plan = planOf(squaring, { width: 800, height: 600 });
  if (!plan) throw new Error("no page");
  expect([plan.width, plan.height]).toEqual([281, 371]);
  for (const point of [
    [0, 0],
    [280, 370],
    [100, 250],
  ] as const) {
    const back = toResult(plan, toPicture(plan, point));
    expect(back?.[0]).toBeCloseTo(point[0], 6);
    expect(back?.[1]).toBeCloseTo(point[1], 6);
  }
});

describe("no page", () => {
  test.each([
    [
      "corners on a line",
      [
        [0, 0],
        [1, 0],
        [2, 0],
        [0, 1],
      ],
    ],
    [
      "crossed corners",
      [
        [0, 0],
        [2, 1],
        [2, 0],
        [0, 1],
      ],
    ],
    [
      "corners the other way round",
      [
        [0, 0],
        [0, 1],
        [2, 1],
        [2, 0],
      ],
    ],
  ] as const)("is made of %s", (_, corners) => {
    expect(finished(squareUp(PICTURE, { ...NOT_SQUARED, corners }))).toBeNull();
  });

  test.each([
    ["a margin of any size", { margin: 1e9 }],
    ["a level beyond all numbers", { level: 1e308 }],
  ] as const)("is made of no squaring with %s", (_, change) => {
    expect(planOf({ ...NOT_SQUARED, ...change }, PICTURE)).toBeNull();
  });

  test("has whole pixels, whatever margin a job file asks for", () => {
    expect(squared({ margin: 0.7 })).toEqual(squared({ margin: 1 }));
    expect(squared({ margin: 0.3 })).toEqual(squared({}));
  });

  test("may be as large as any picture that a job can hold, with a margin", () => {
    const large = { width: 10_000, height: 10_000 };
    expect(planOf({ ...NOT_SQUARED, margin: 100 }, large)).toMatchObject({ width: 10_200 });
  });

  test("is needed for a picture of one pixel or none", () => {
    const one: Grey = { width: 1, height: 1, data: Uint8Array.from([9]) };
    expect(squared({ quarters: 1, level: 3, isMirrored: true }, one)).toEqual([[9]]);
    expect(finished(squareUp(greyOf(0, 0), NOT_SQUARED))).toBeNull();
    const colour: Rgba = { width: 1, height: 1, data: Uint8ClampedArray.from([1, 2, 3, 255]) };
    expect(finished(squareUp(colour, NOT_SQUARED))).toEqual(colour);
  });
});
