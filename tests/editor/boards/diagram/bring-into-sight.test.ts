import { expect, test } from "vitest";
import type { Box } from "../../../../src/base/index.ts";
import type { Board } from "../../../../src/editor/boards/diagram/board.ts";
import { bringIntoSight } from "../../../../src/editor/boards/diagram/scan/bring-into-sight.ts";

const box = (left: number, top: number, width: number, height: number): Box => ({
  left,
  top,
  right: left + width,
  bottom: top + height,
});

/** A view of 400 by 300 pixels, and where it looks after a piece of the sheet was brought into sight. */
function lookedAt(camera: { zoom: number; left: number; top: number }, piece: Box, tall?: number) {
  let now = camera;
  const board = {
    camera: () => now,
    get: () => ({ size: { width: 400, height: 300 } }),
    look: (next: typeof camera) => {
      now = next;
    },
  };
  bringIntoSight(board as unknown as Board, piece, tall);
  return now;
}

const HERE = { zoom: 1, left: 1000, top: 1000 };

test("what is in sight and can be read moves nothing", () => {
  expect(lookedAt(HERE, box(1100, 1100, 60, 20))).toBe(HERE);
});

test("the view goes no further than it must, and what it goes for does not touch its edge", () => {
  expect(lookedAt(HERE, box(1380, 1100, 60, 20))).toEqual({ zoom: 1, left: 1056, top: 1000 });
  expect(lookedAt(HERE, box(1100, 950, 60, 20))).toEqual({ zoom: 1, left: 1000, top: 934 });
  expect(lookedAt(HERE, box(1338, 1100, 60, 20))).toEqual({ zoom: 1, left: 1014, top: 1000 });
});

test("of what is larger than the view the middle is shown", () => {
  expect(lookedAt(HERE, box(900, 1100, 1000, 20))).toEqual({ zoom: 1, left: 1200, top: 1000 });
});

test("what is too small to read is enlarged in the middle", () => {
  const now = lookedAt({ zoom: 0.1, left: 0, top: 0 }, box(1000, 1000, 60, 20));
  expect(now.zoom).toBeCloseTo(0.8);
  expect(now.left + 200 / now.zoom).toBeCloseTo(1030);
  expect(now.top + 150 / now.zoom).toBeCloseTo(1010);
});

test("a single thin letter is enlarged by its height, like the words about it", () => {
  const now = lookedAt({ zoom: 0.1, left: 0, top: 0 }, box(1000, 1000, 4, 20), 20);
  expect(now.zoom).toBeCloseTo(0.8);
  expect(lookedAt(HERE, box(1100, 1100, 4, 20), 20)).toBe(HERE);
});
