import fc from "fast-check";
import { expect, test } from "vitest";
import { cavitiesFromPhoto, dotsOnPhoto, marksOfDots, mmPerPixel } from "../../src/plug/index.ts";

const numbers = { style: "numbers", first: 1 } as const;

test("the pitch between the first two clicks sets the scale of all", () => {
  const face = cavitiesFromPhoto(
    [{ at: [100, 200] }, { at: [150, 200] }, { at: [100, 260] }],
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
      const face = cavitiesFromPhoto(
        points.map((at) => ({ at })),
        { by: "pitch", mm: pitch },
        numbers,
      );
      const [a, b] = face?.cavities ?? [];
      expect(a && b && Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1])).toBeCloseTo(pitch, 2);
    }),
  );
});

test("any two points at a known distance set the scale", () => {
  const ends = [
    [0, 0],
    [300, 400],
  ] as const;
  expect(mmPerPixel([], { by: "points", mm: 25, ends })).toBe(0.05);
  expect(mmPerPixel([], { by: "points", mm: 25, ends: null })).toBeNull();
});

test("new cavities take the marks that are free, those there before keep theirs", () => {
  const dots = [
    { at: [0, 0] as const, mark: "2" },
    { at: [1, 0] as const },
    { at: [2, 0] as const },
  ];
  expect(marksOfDots(dots, numbers)).toEqual(["2", "1", "3"]);
});

test("a face goes back onto its photo and comes off again where it was", () => {
  const photo = {
    file: "a.png",
    width: 800,
    height: 600,
    at: [3, -4] as [number, number],
    mmPerPixel: 0.05,
  };
  const cavities = [
    { mark: "A", at: [13, 6] as [number, number] },
    { mark: "B", at: [18.5, 6] as [number, number] },
  ];
  const dots = dotsOnPhoto({ cavities, photo });
  expect(dots[0]?.at[0]).toBeCloseTo(200, 6);
  const back = cavitiesFromPhoto(dots, { by: "before", mmPerPixel: 0.05 }, numbers, photo.at);
  expect(back?.cavities).toEqual(cavities);
});
