import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "../../../src/base/index.ts";
import { fitBox, fromView, panBy, toView, viewBox, zoomAbout } from "../../../src/session/index.ts";

const place = fc.double({ min: -5000, max: 5000, noNaN: true });
const camera = fc.record({
  left: place,
  top: place,
  zoom: fc.double({ min: 0.02, max: 20, noNaN: true }),
});
const point = fc.tuple(place, place);
const near = (a: Point, b: Point) => {
  expect(a[0]).toBeCloseTo(b[0], 4);
  expect(a[1]).toBeCloseTo(b[1], 4);
};

test("to the view and back is where one was", () => {
  fc.assert(fc.property(camera, point, (now, p) => near(fromView(now, toView(now, p)), p)));
});

test("zooming leaves what is under the pointer where it is", () => {
  const factor = fc.double({ min: 0.2, max: 5, noNaN: true });
  const pointer = fc.tuple(fc.nat(2000), fc.nat(2000));
  fc.assert(
    fc.property(camera, pointer, factor, (now, at, by) => {
      near(fromView(zoomAbout(now, at, by), at), fromView(now, at));
    }),
  );
});

test("zooming stops before a sheet is lost to sight", () => {
  let now = { left: 0, top: 0, zoom: 1 };
  for (let i = 0; i < 200; i++) now = zoomAbout(now, [0, 0], 0.5);
  expect(now.zoom).toBeGreaterThan(0.001);
  for (let i = 0; i < 400; i++) now = zoomAbout(now, [0, 0], 2);
  expect(now.zoom).toBeLessThan(1000);
});

test("panning takes the sheet along with the pointer", () => {
  fc.assert(
    fc.property(camera, point, (now, p) => {
      const [x, y] = toView(now, p);
      near(toView(panBy(now, [30, -20]), p), [x + 30, y - 20]);
    }),
  );
});

test("a fitted box is wholly in view", () => {
  const size = { width: 800, height: 500 };
  const box = { left: 100, top: 50, right: 5000, bottom: 700 };
  const seen = viewBox(fitBox(box, size, 20), size);
  expect(seen.left).toBeLessThan(box.left);
  expect(seen.top).toBeLessThan(box.top);
  expect(seen.right).toBeGreaterThan(box.right);
  expect(seen.bottom).toBeGreaterThan(box.bottom);
});
