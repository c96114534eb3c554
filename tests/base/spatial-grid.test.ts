import fc from "fast-check";
import { expect, test } from "vitest";
import { type Box, boxesOverlap, spatialGrid } from "../../src/base/index.ts";

test("the grid finds every box that overlaps, however large or small", () => {
  const box = fc
    .tuple(
      fc.integer({ min: -900, max: 900 }),
      fc.integer({ min: -900, max: 900 }),
      fc.nat(700),
      fc.nat(700),
    )
    .map(([left, top, w, h]): Box => ({ left, top, right: left + w, bottom: top + h }));
  fc.assert(
    fc.property(
      fc.array(box, { maxLength: 40 }),
      box,
      fc.integer({ min: 5, max: 300 }),
      (boxes, area, size) => {
        const near = new Set(spatialGrid(boxes, size).near(area));
        boxes.forEach((one, index) => {
          if (boxesOverlap(one, area)) expect(near.has(index)).toBe(true);
        });
      },
    ),
  );
});
