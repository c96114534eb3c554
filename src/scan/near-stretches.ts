import type { Point } from "../base/index.ts";
import type { Skeleton, Stretch } from "./lines/skeleton.ts";

/** Pixels that a square of the page is wide. */
const SIDE = 32;

/** Stretches by where their pixels are, for looking round many places without looking at all of them. */
export class NearStretches {
  private readonly squares = new Map<number, number[]>();
  private readonly across: number;
  private readonly down: number;

  constructor({ stretches, width, height }: Skeleton) {
    [this.across, this.down] = [Math.ceil(width / SIDE), Math.ceil(height / SIDE)];
    for (let stretch = 0; stretch < stretches.length; stretch++) {
      let last = -1;
      for (const at of (stretches[stretch] as Stretch).pixels) {
        const x = at % width;
        const square = Math.floor((at - x) / width / SIDE) * this.across + Math.floor(x / SIDE);
        if (square === last) continue;
        last = square;
        const known = this.squares.get(square);
        if (!known) this.squares.set(square, [stretch]);
        else if (known[known.length - 1] !== stretch) known.push(stretch);
      }
    }
  }

  /** Those that come within so many pixels of a place, and some others, by their numbers in order. */
  around([x, y]: Point, reach: number): readonly number[] {
    const found = new Set<number>();
    const [left, right] = squaresOf(x, reach, this.across);
    const [top, bottom] = squaresOf(y, reach, this.down);
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        for (const one of this.squares.get(row * this.across + column) ?? []) found.add(one);
      }
    }
    return [...found].sort((a, b) => a - b);
  }
}

/** First and last square within `reach` of a coordinate, of so many: none for one far off the page. */
const squaresOf = (at: number, reach: number, count: number): readonly [number, number] => [
  Math.max(0, Math.floor((at - reach) / SIDE)),
  Math.min(count - 1, Math.floor((at + reach) / SIDE)),
];
