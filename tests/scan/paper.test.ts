import { expect, test } from "vitest";
import { paperAlong } from "../../src/scan/paper.ts";

test("paper between the middles of cells lies on a straight line, and is level beyond the last", () => {
  // Cells of 4 pixels: their middles lie at 1.5, 5.5 and 9.5.
  const paper = {
    cell: 4,
    across: 3,
    down: 2,
    tone: Float32Array.from([100, 140, 60, 100, 140, 60]),
  };
  const row = new Float32Array(11);
  paperAlong(paper, 0, row);
  expect([...row]).toEqual([100, 100, 105, 115, 125, 135, 130, 110, 90, 70, 60]);
});

test("paper between two rows of cells likewise, and never darker than 1", () => {
  const paper = { cell: 4, across: 1, down: 2, tone: Float32Array.from([0, 80]) };
  const row = new Float32Array(3);
  const tones = [0, 2, 5, 7].map((y) => {
    paperAlong(paper, y, row);
    return row[1];
  });
  expect(tones).toEqual([1, 10, 70, 80]);
});
