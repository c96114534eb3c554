import fc from "fast-check";
import { expect, test } from "vitest";
import {
  fitCamera,
  startCamera,
  toBoard,
  toFace,
  zoomAt,
} from "../../../../src/editor/boards/plug/camera.ts";
import { snapTo } from "../../../../src/editor/boards/plug/snap.ts";

const length = fc.integer({ min: 5, max: 150 });
const pixels = fc.integer({ min: 200, max: 2000 });
const faces = fc
  .tuple(length, length, fc.integer({ min: -50, max: 50 }))
  .map(([width, height, left]) => ({
    left,
    top: left,
    right: left + width,
    bottom: left + height,
  }));

test("the whole face comes onto the board", () => {
  fc.assert(
    fc.property(faces, pixels, pixels, (bounds, width, height) => {
      const camera = fitCamera(bounds, { width, height }, 4);
      const [left, top] = toBoard(camera, [bounds.left, bounds.top]);
      const [right, bottom] = toBoard(camera, [bounds.right, bounds.bottom]);
      expect(left).toBeGreaterThanOrEqual(-1e-6);
      expect(top).toBeGreaterThanOrEqual(-1e-6);
      expect(right).toBeLessThanOrEqual(width + 1e-6);
      expect(bottom).toBeLessThanOrEqual(height + 1e-6);
    }),
  );
});

test("a crowded face starts large enough for a finger, at its first cavity", () => {
  const bounds = { left: 0, top: 0, right: 44, bottom: 15 };
  const cavities = { left: 4, top: 4, right: 40, bottom: 12 };
  const size = { width: 390, height: 600 };
  expect(fitCamera(bounds, size, 4).scale * 4).toBeLessThan(44);
  const start = startCamera(bounds, cavities, size, 4);
  expect(start.scale * 4).toBeGreaterThanOrEqual(44);
  const [x, y] = toBoard(start, [cavities.left, cavities.top]);
  expect(x).toBeGreaterThan(22);
  expect(x).toBeLessThan(100);
  expect(y).toBeGreaterThan(22);
});

test("a face with room enough starts whole", () => {
  const bounds = { left: 0, top: 0, right: 20, bottom: 12 };
  const size = { width: 640, height: 480 };
  expect(startCamera(bounds, { left: 4, top: 4, right: 16, bottom: 8 }, size, 4)).toEqual(
    fitCamera(bounds, size, 4),
  );
});

test("zooming keeps the point under the finger where it is", () => {
  fc.assert(
    fc.property(
      faces,
      fc.double({ min: 0.2, max: 5, noNaN: true }),
      pixels,
      pixels,
      (bounds, factor, x, y) => {
        const camera = fitCamera(bounds, { width: 800, height: 600 }, 4);
        const under = toFace(camera, [x, y]);
        const [x2, y2] = toBoard(zoomAt(camera, factor, [x, y]), under);
        expect(x2).toBeCloseTo(x, 6);
        expect(y2).toBeCloseTo(y, 6);
      },
    ),
  );
});

test("a dragged cavity falls into line with its neighbours, in each direction apart", () => {
  expect(
    snapTo(
      [5.2, 9.9],
      [
        [5, 0],
        [0, 10],
      ],
      0.5,
    ),
  ).toEqual([5, 10]);
  expect(
    snapTo(
      [5.6, 9.9],
      [
        [5, 0],
        [0, 10],
      ],
      0.5,
    ),
  ).toEqual([5.6, 10]);
});
