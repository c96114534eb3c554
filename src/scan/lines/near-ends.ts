import { addTo, type Point } from "../../base/index.ts";
import type { OpenEnd } from "./open-ends.ts";

/** Open ends by where they are, for looking round a place without looking at all of them. */
export class NearEnds {
  private readonly cells = new Map<string, OpenEnd[]>();
  private readonly cell: number;

  /** `reach` is how far, in pixels, one usually looks. */
  constructor(ends: readonly OpenEnd[], reach: number) {
    this.cell = Math.max(1, reach);
    for (const end of ends) addTo(this.cells, this.idOf(end.at[0], end.at[1]), end);
  }

  /** The ends within so many pixels of a place, and some beyond. */
  around([x, y]: Point, reach: number): OpenEnd[] {
    const found: OpenEnd[] = [];
    for (let top = y - reach; top < y + reach + this.cell; top += this.cell) {
      for (let left = x - reach; left < x + reach + this.cell; left += this.cell) {
        for (const end of this.cells.get(this.idOf(left, top)) ?? []) found.push(end);
      }
    }
    return found;
  }

  private idOf(x: number, y: number): string {
    return `${Math.floor(x / this.cell)},${Math.floor(y / this.cell)}`;
  }
}
