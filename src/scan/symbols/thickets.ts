import { CrowdedPage } from "../crowded-page.ts";
import { cellNumber } from "./cell-number.ts";
import type { Pose } from "./pose.ts";

/** Side of a square of the page, line widths: a symbol is some 30 wide. */
const SIDE = 32;
/**
 * Poses that are tried in one square: on drawn pages and scans of diagrams no square has 450, among
 * concentric circles each has thousands.
 */
const MOST_TRIED = 500;
/** So many thick squares, and the picture is no diagram: trying on would take minutes. */
const MOST_THICK = 24;
/** Poses that are tried on a page: a full sheet of 17 megapixels has some 30,000. */
const MOST_OF_ALL = 150_000;
/**
 * Poses that are moved to where they fit best, which is most of the work: some 45 for each symbol that is
 * drawn, 2,500 on a full sheet, 48,000 on a page of small boxes side by side. A clean page of 400 fuses
 * and lamps has 4,000; one of more than some 330 symbols as intricate as those of that sheet would be refused.
 */
const MOST_MOVED = 15_000;

const TOO_DENSE =
  "There are too many lines or symbols on this picture, or too close together, to tell its parts apart. Crop it to the diagram or to a piece of it, or clean it first.";

type Place = Pick<Pose, "x" | "y">;

/** Squares of a page where so much line lies so close that nearly anything can be read into it. */
export class Thickets {
  private readonly side: number;
  private readonly tried = new Map<number, number>();
  private thick = 0;
  private all = 0;
  private moved = 0;

  /** `line`: width of the usual line, pixels. */
  constructor(line: number) {
    this.side = SIDE * line;
  }

  /** Counts a pose that is tried; throws where the page is a thicket all over, or nearly one. */
  add(pose: Place): void {
    if (++this.all > MOST_OF_ALL) throw new CrowdedPage(TOO_DENSE);
    const square = this.squareOf(pose);
    const count = (this.tried.get(square) ?? 0) + 1;
    this.tried.set(square, count);
    if (count === MOST_TRIED && ++this.thick > MOST_THICK) throw new CrowdedPage(TOO_DENSE);
  }

  /** Counts a pose that is moved to where it fits best; throws where there are far too many. */
  addMoved(): void {
    if (++this.moved > MOST_MOVED) throw new CrowdedPage(TOO_DENSE);
  }

  /** Whether nothing more is tried there. */
  isThick(pose: Place): boolean {
    return (this.tried.get(this.squareOf(pose)) ?? 0) >= MOST_TRIED;
  }

  /** Whether it is thick there or in a square beside it, so that nothing there is sure. */
  isNearThick({ x, y }: Place): boolean {
    if (this.thick === 0) return false;
    const beside = [-this.side, 0, this.side];
    return beside.some((dx) => beside.some((dy) => this.isThick({ x: x + dx, y: y + dy })));
  }

  private squareOf({ x, y }: Place): number {
    return cellNumber(Math.floor(x / this.side), Math.floor(y / this.side));
  }
}
