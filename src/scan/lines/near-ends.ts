import { boxAt, type Point, type SpatialGrid, spatialGrid } from "../../base/index.ts";
import type { OpenEnd } from "./open-ends.ts";

/** Open ends by where they are, for looking round a place without looking at all of them. */
export class NearEnds {
  private readonly ends: readonly OpenEnd[];
  private readonly grid: SpatialGrid;

  /** `reach` is how far, in pixels, one usually looks. */
  constructor(ends: readonly OpenEnd[], reach: number) {
    this.ends = ends;
    this.grid = spatialGrid(
      ends.map(({ at }) => boxAt(at, 0)),
      Math.max(1, reach),
    );
  }

  /** The ends within so many pixels of a place, and some beyond. */
  around(place: Point, reach: number): OpenEnd[] {
    return this.grid.near(boxAt(place, reach)).map((number) => this.ends[number] as OpenEnd);
  }
}
