import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "../../../src/base/index.ts";
import { orthogonalCorners, withoutIdleCorners } from "../../../src/session/index.ts";

const coordinate = fc.integer({ min: -500, max: 500 });
const point = fc.tuple(coordinate, coordinate);
const out = fc.constantFrom<Point | null>(null, [1, 0], [-1, 0], [0, 1], [0, -1]);

test("a route runs at right angles whatever its ends and the ways they face", () => {
  fc.assert(
    fc.property(point, out, point, out, (a, aOut, b, bOut) => {
      const run = [a, ...orthogonalCorners({ at: a, out: aOut }, { at: b, out: bOut }), b];
      for (let i = 1; i < run.length; i++) {
        const [x0, y0] = run[i - 1] as Point;
        const [x1, y1] = run[i] as Point;
        expect(x0 === x1 || y0 === y1).toBe(true);
      }
    }),
  );
});

test("ends in line and facing one another need no corner", () => {
  expect(orthogonalCorners({ at: [0, 0], out: [1, 0] }, { at: [100, 0], out: [-1, 0] })).toEqual(
    [],
  );
});

test("one corner is enough where each end can be left its own way", () => {
  expect(orthogonalCorners({ at: [0, 0], out: [1, 0] }, { at: [100, 80], out: [0, -1] })).toEqual([
    [100, 0],
  ]);
});

test("a route never starts back through the symbol it leaves", () => {
  const [first] = orthogonalCorners({ at: [0, 0], out: [-1, 0] }, { at: [100, 50], out: null });
  expect(first?.[0]).toBeLessThanOrEqual(0);
});

test("a step is put where no other wire lies", () => {
  const a = { at: [0, 0] as const, out: [1, 0] as const };
  const b = { at: [120, 60] as const, out: [-1, 0] as const };
  expect(orthogonalCorners(a, b)[0]).toEqual([60, 0]);
  const taken = orthogonalCorners(a, b, (p, q) => p[0] === 60 && q[0] === 60);
  expect(taken).toHaveLength(2);
  expect(taken[0]?.[0]).not.toBe(60);
});

test("corners that bend nothing are left out and the rest stay", () => {
  expect(
    withoutIdleCorners(
      [0, 0],
      [
        [50, 0],
        [100, 0],
        [100, 0],
        [100, 60],
      ],
      [100, 90],
    ),
  ).toEqual([[100, 0]]);
});
