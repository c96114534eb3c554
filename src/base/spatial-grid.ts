import type { Box } from "./geometry.ts";
import { addTo } from "./lists.ts";

/**
 * Boxes sorted into square cells, so that what lies near a point is found without a look at all of
 * them. Built once for a set of boxes; indices are those of the list it was built from.
 */
export interface SpatialGrid {
  /** Indices of boxes whose cells `area` touches: a superset of those that overlap it, no repeats. */
  near(area: Box): number[];
  /**
   * The same grid, which offers some indices wherever one looks: what has moved a little is no
   * reason to sort all the rest again. Null where that would be too many.
   */
  offering(indices: readonly number[]): SpatialGrid | null;
}

/** More than these, offered everywhere, would make every look-up slow. */
const MOST_OFFERED = 300;

/** A box over more cells than this is kept apart and always offered. */
const MOST_CELLS = 400;

/** @param size edge of a cell in the unit of the boxes, above 0 */
export function spatialGrid(boxes: readonly Box[], size: number): SpatialGrid {
  const cells = new Map<number, number[]>();
  const large: number[] = [];
  const cell = (value: number) => Math.floor(value / size);
  // Columns and rows stay within ±2^20, so one number names a cell.
  const keyOf = (column: number, row: number) => (column + 0x100000) * 0x200000 + row + 0x100000;
  const span = (box: Box) => [cell(box.left), cell(box.right), cell(box.top), cell(box.bottom)];
  boxes.forEach((box, index) => {
    const [left, right, top, bottom] = span(box) as [number, number, number, number];
    if ((right - left + 1) * (bottom - top + 1) > MOST_CELLS) {
      large.push(index);
      return;
    }
    for (let column = left; column <= right; column++) {
      for (let row = top; row <= bottom; row++) {
        addTo(cells, keyOf(column, row), index);
      }
    }
  });
  return offeringToo((area) => {
    const [left, right, top, bottom] = span(area) as [number, number, number, number];
    if ((right - left + 1) * (bottom - top + 1) > cells.size + MOST_CELLS) {
      return boxes.map((_, index) => index);
    }
    const found = new Set(large);
    for (let column = left; column <= right; column++) {
      for (let row = top; row <= bottom; row++) {
        for (const index of cells.get(keyOf(column, row)) ?? []) found.add(index);
      }
    }
    return [...found];
  }, new Set());
}

const offeringToo = (near: SpatialGrid["near"], always: ReadonlySet<number>): SpatialGrid => ({
  near: always.size === 0 ? near : (area) => [...new Set([...near(area), ...always])],
  offering(indices) {
    const all = new Set([...always, ...indices]);
    return all.size > MOST_OFFERED ? null : offeringToo(near, all);
  },
});
