import fc from "fast-check";
import { expect, test } from "vitest";
import { cavitiesFromPhotoClicks, mmPerPixel } from "../../src/plug/index.ts";

const numbers = { style: "numbers", first: 1 } as const;

test("the pitch between the first two clicks sets the scale of all", () => {
  const face = cavitiesFromPhotoClicks(
    [
      [100, 200],
      [150, 200],
      [100, 260],
    ],
    { by: "pitch", mm: 5 },
    numbers,
  );
  expect(face).toEqual({
    mmPerPixel: 0.1,
    cavities: [
      { mark: "1", at: [10, 20] },
      { mark: "2", at: [15, 20] },
      { mark: "3", at: [10, 26] },
    ],
  });
});

test("the width of the picture sets the scale from the first click on", () => {
  expect(mmPerPixel([], { by: "width", mm: 60, pixels: 1200 })).toBe(0.05);
});

test("without two different clicks a pitch says nothing", () => {
  expect(mmPerPixel([[1, 1]], { by: "pitch", mm: 5 })).toBeNull();
  expect(
    mmPerPixel(
      [
        [1, 1],
        [1, 1],
      ],
      { by: "pitch", mm: 5 },
    ),
  ).toBeNull();
  expect(mmPerPixel([], { by: "width", mm: 0, pixels: 100 })).toBeNull();
});

test("the typed pitch is the distance of the first two cavities in millimetres", () => {
  const pixel = fc.integer({ min: 0, max: 4000 });
  const clicks = fc.array(fc.tuple(pixel, pixel), { minLength: 2, maxLength: 20 });
  fc.assert(
    fc.property(clicks, fc.integer({ min: 1, max: 30 }), (points, pitch) => {
      const [first, second] = points;
      fc.pre(first?.join() !== second?.join());
      const face = cavitiesFromPhotoClicks(points, { by: "pitch", mm: pitch }, numbers);
      const [a, b] = face?.cavities ?? [];
      expect(a && b && Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1])).toBeCloseTo(pitch, 2);
    }),
  );
});
