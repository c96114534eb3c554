import fc from "fast-check";
import { expect, test } from "vitest";
import { distance, type Point } from "../../src/base/index.ts";
import {
  draggedOn,
  type Fill,
  fillOfDrag,
  hintOf,
  NO_HINT,
  pointsOfFill,
  withCount,
} from "../../src/plug/index.ts";

const pixel = fc.integer({ min: 0, max: 4000 });
const point = fc.tuple(pixel, pixel);

const near = (a: Point | undefined, b: Point | undefined) =>
  expect(a && b ? distance(a, b) : Number.NaN).toBeLessThan(1e-6);

test("a row has its ends where it was dragged, and one pitch between all neighbours", () => {
  fc.assert(
    fc.property(point, point, fc.integer({ min: 2, max: 60 }), (from, to, count) => {
      const points = pointsOfFill({ shape: "row", from, to, count });
      expect(points).toHaveLength(count);
      near(points[0], from);
      near(points.at(-1), to);
      const pitch = distance(from, to) / (count - 1);
      for (const [index, at] of points.entries()) {
        const next = points[index + 1];
        if (next) expect(distance(at, next)).toBeCloseTo(pitch, 6);
      }
    }),
  );
});

test("a grid of a photo held askew is a turned grid with its corners where it was dragged", () => {
  const tilt = fc.double({ min: -0.3, max: 0.3, noNaN: true });
  const size = fc.integer({ min: 2, max: 12 });
  fc.assert(
    fc.property(
      point,
      tilt,
      size,
      size,
      fc.integer({ min: 5, max: 90 }),
      (from, t, r, c, pitch) => {
        // Laid out level, then turned about its first corner.
        const level = Array.from(
          { length: r * c },
          (_, i): Point => [(i % c) * pitch, Math.floor(i / c) * pitch * 1.4],
        );
        const truth = level.map(
          ([x, y]): Point => [
            from[0] + x * Math.cos(t) - y * Math.sin(t),
            from[1] + x * Math.sin(t) + y * Math.cos(t),
          ],
        );
        const to = truth.at(-1) ?? from;
        const points = pointsOfFill({
          shape: "grid",
          from,
          to,
          rows: r,
          columns: c,
          tilt: t,
          run: "across",
        });
        expect(points).toHaveLength(truth.length);
        for (const [index, at] of points.entries()) near(at, truth[index]);
      },
    ),
  );
});

test("marks run across, down or to and fro from the corner where the drag began", () => {
  const grid = (run: "across" | "down" | "serpentine"): Fill => ({
    shape: "grid",
    from: [20, 10],
    to: [0, 0],
    rows: 2,
    columns: 3,
    tilt: 0,
    run,
  });
  const xy = (fill: Fill) => pointsOfFill(fill).map(([x, y]) => `${x + 0},${y + 0}`);
  expect(xy(grid("across"))).toEqual(["20,10", "10,10", "0,10", "20,0", "10,0", "0,0"]);
  expect(xy(grid("down"))).toEqual(["20,10", "20,0", "10,10", "10,0", "0,10", "0,0"]);
  expect(xy(grid("serpentine"))).toEqual(["20,10", "10,10", "0,10", "0,0", "10,0", "20,0"]);
});

test("a ring begins on the rim where it was dragged and runs the way it is told", () => {
  const ring = { shape: "ring", middle: [100, 100], rim: [100, 50], count: 4 } as const;
  const xy = (fill: Fill) =>
    pointsOfFill(fill).map(([x, y]) => `${Math.round(x)},${Math.round(y)}`);
  expect(xy({ ...ring, turn: "clockwise" })).toEqual(["100,50", "150,100", "100,150", "50,100"]);
  expect(xy({ ...ring, turn: "anticlockwise" })).toEqual([
    "100,50",
    "50,100",
    "100,150",
    "150,100",
  ]);
});

test("the pitch of one row counts the next and pulls its end into step", () => {
  const first: Fill = { shape: "row", from: [0, 0], to: [400, 0], count: 5 };
  const hint = hintOf(first, NO_HINT);
  expect(hint).toEqual({ pitch: 100, tilt: 0 });
  const next = fillOfDrag("row", [50, 90], [655, 90], first, hint);
  expect(next).toEqual({ shape: "row", from: [50, 90], to: [650, 90], count: 7 });
});

test("an end well off the pitch before is meant, and is left where it is", () => {
  const hint = { pitch: 100, tilt: 0 };
  expect(fillOfDrag("row", [0, 0], [640, 0], null, hint)).toMatchObject({ to: [640, 0], count: 7 });
});

test("a count that was chosen stays while the drag goes on", () => {
  const hint = { pitch: 100, tilt: 0 };
  const fill = withCount(fillOfDrag("row", [0, 0], [200, 0], null, hint), 6);
  expect(draggedOn(fill, [700, 0], true, hint)).toMatchObject({ count: 6, to: [700, 0] });
  expect(draggedOn(fill, [700, 0], false, hint)).toMatchObject({ count: 8 });
});

test("a row a little askew tells how the plug lies in the photo, a slanting one does not", () => {
  const row = (to: Point): Fill => ({ shape: "row", from: [0, 0], to, count: 3 });
  expect(hintOf(row([200, 20]), NO_HINT).tilt).toBeCloseTo(Math.atan2(20, 200), 9);
  expect(hintOf(row([-20, 200]), NO_HINT).tilt).toBeCloseTo(Math.atan2(20, 200), 9);
  expect(hintOf(row([200, 180]), NO_HINT).tilt).toBe(0);
});

test("a count is held to what a plug can have", () => {
  const fill: Fill = { shape: "row", from: [0, 0], to: [10, 0], count: 2 };
  expect(withCount(fill, 0)).toMatchObject({ count: 1 });
  expect(withCount(fill, 500)).toMatchObject({ count: 60 });
});
