import type { Box } from "../base/index.ts";
import { type PixelRows, pixelRows } from "./lines/pixel-rows.ts";
import type { PreparedPage } from "./lines/prepared-page.ts";
import { asPart, type Sliced } from "./sliced.ts";

/**
 * Pixels of thinned lines at which lines end or fork, at most. A full sheet of 17 megapixels has some
 * 3,000, one covered with small print some 40,000; millimetre paper scanned at 300 dots an inch has
 * 300,000, which would take half a minute and a gigabyte.
 */
const MOST_MARKS = 50_000;
/** Places looked at in a slice. */
const PLACES = 250_000;

type ThinnedPage = Pick<PreparedPage, "thinned" | "places">;

/** Thrown where a picture has far more lines than any diagram: its message says what to do. */
export class CrowdedPage extends Error {
  override name = "CrowdedPage";
}

/**
 * How many times as many lines lie outside of some boxes as can be looked at in bounded time and memory; 0
 * where they can. Boxes are in pixels of the prepared page.
 */
export function* crowdOn(page: ThinnedPage, boxes: readonly Box[]): Sliced<number> {
  const marks = yield* asPart(marksOn(page, null), 0, 0.5);
  if (marks <= MOST_MARKS) return 0;
  if (boxes.length === 0) return marks / MOST_MARKS;
  const left = yield* asPart(marksOn(page, new Covered(page, boxes)), 0.5, 1);
  return left <= MOST_MARKS ? 0 : left / MOST_MARKS;
}

/** How many pixels of lines have one neighbour at most, or more than two. */
function* marksOn(page: ThinnedPage, covered: Covered | null): Sliced<number> {
  const { thinned, places } = page;
  const { width, height, data: lines } = thinned;
  const [first, end] = [width, width * (height - 1)];
  let marks = 0;
  for (let from = 0; from < places.length; from += PLACES) {
    const to = Math.min(places.length, from + PLACES);
    for (let n = from; n < to; n++) {
      const at = places[n] as number;
      if (at < first || at >= end) continue;
      if (neighboursOf(lines, width, at) === 2) continue;
      if (covered === null || !covered.holds(at)) marks++;
    }
    yield to / places.length;
  }
  return marks;
}

/** Pixels of line beside one; over a corner only where no side leads there as well. */
function neighboursOf(lines: Uint8Array, width: number, at: number): number {
  const [above, below] = [at - width, at + width];
  const up = lines[above] as number;
  const east = lines[at + 1] as number;
  const down = lines[below] as number;
  const west = lines[at - 1] as number;
  let count = up + east + down + west;
  if (!up && !east) count += lines[above + 1] as number;
  if (!down && !east) count += lines[below + 1] as number;
  if (!down && !west) count += lines[below - 1] as number;
  if (!up && !west) count += lines[above - 1] as number;
  return count;
}

/** Which pixels of a row lie in any of some boxes; rows are asked for from the top down. */
class Covered {
  private readonly entering: readonly PixelRows[];
  private readonly leaving: readonly PixelRows[];
  private entered = 0;
  private left = 0;
  private readonly width: number;
  /** At each column of the row at hand, how many boxes more begin there than end. */
  private readonly steps: Int32Array;
  private readonly row: Uint8Array;
  private y = -1;

  constructor({ thinned }: ThinnedPage, boxes: readonly Box[]) {
    const rows = boxes
      .map((box) => pixelRows(box, 0, thinned))
      .filter((one) => one.left < one.right);
    this.entering = rows.filter((one) => one.top < one.bottom).sort((a, b) => a.top - b.top);
    this.leaving = [...this.entering].sort((a, b) => a.bottom - b.bottom);
    this.width = thinned.width;
    this.steps = new Int32Array(this.width + 1);
    this.row = new Uint8Array(this.width);
  }

  holds(at: number): boolean {
    const x = at % this.width;
    const y = (at - x) / this.width;
    if (y !== this.y) this.moveTo(y);
    return this.row[x] === 1;
  }

  private moveTo(y: number): void {
    this.y = y;
    const before = this.entered + this.left;
    for (let next = this.entering[this.entered]; next && next.top <= y; ) {
      this.add(next, 1);
      next = this.entering[++this.entered];
    }
    for (let next = this.leaving[this.left]; next && next.bottom <= y; ) {
      this.add(next, -1);
      next = this.leaving[++this.left];
    }
    if (this.entered + this.left === before) return;
    let open = 0;
    for (let x = 0; x < this.width; x++) {
      open += this.steps[x] as number;
      this.row[x] = open > 0 ? 1 : 0;
    }
  }

  private add({ left, right }: PixelRows, by: 1 | -1): void {
    this.steps[left] = (this.steps[left] as number) + by;
    this.steps[right] = (this.steps[right] as number) - by;
  }
}
