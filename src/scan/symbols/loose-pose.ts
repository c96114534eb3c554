import type { DrawnSymbol } from "./drawn-symbol.ts";
import { type Matrix, matrixOf, type Pose, turnOf } from "./pose.ts";

/** What of a pose can be changed: its middle, its units and its turn. */
export type Change = "right" | "down" | "along" | "across" | "size" | "askew";

/** Degrees that a page, or a symbol on it, lies askew at most. */
export const MOST_ASKEW = 6;

/**
 * A pose that is changed in place while a symbol is moved to where it fits best. Stretched and turned
 * about the middle of what is drawn, which need not be the symbol's own point. Is its own matrix.
 */
export class LoosePose implements Matrix {
  x = 0;
  y = 0;
  a = 0;
  b = 0;
  c = 0;
  d = 0;
  along: number;
  across: number;
  private askew: number;
  private readonly start: Pose;
  /** Middle of what is drawn: units, and on the page. */
  private readonly ownX: number;
  private readonly ownY: number;
  private middleX: number;
  private middleY: number;
  private readonly kept = new Float64Array(5);

  constructor({ body: { left, top, right, bottom } }: DrawnSymbol, pose: Pose) {
    this.start = pose;
    this.along = pose.along;
    this.across = pose.across;
    this.askew = pose.askew;
    this.ownX = (left + right) / 2;
    this.ownY = (top + bottom) / 2;
    const { x, y, a, b, c, d } = matrixOf(pose);
    this.middleX = x + a * this.ownX + c * this.ownY;
    this.middleY = y + b * this.ownX + d * this.ownY;
    this.lie();
  }

  /** `by`: pixels, pixels a unit or degrees. */
  change(what: Change, by: number): void {
    this.keep();
    if (what === "right") this.middleX += by;
    else if (what === "down") this.middleY += by;
    else if (what === "askew") {
      this.askew = Math.max(-MOST_ASKEW, Math.min(MOST_ASKEW, this.askew + by));
    } else {
      if (what !== "across") this.along += by;
      if (what !== "along") this.across += by;
    }
    this.lie();
  }

  /** Takes the last change back. */
  undo(): void {
    const { kept } = this;
    this.middleX = kept[0] as number;
    this.middleY = kept[1] as number;
    this.along = kept[2] as number;
    this.across = kept[3] as number;
    this.askew = kept[4] as number;
    this.lie();
  }

  pose(): Pose {
    const { x, y, along, across, askew, start } = this;
    return { ...start, x, y, along, across, askew };
  }

  private keep(): void {
    const { kept } = this;
    kept[0] = this.middleX;
    kept[1] = this.middleY;
    kept[2] = this.along;
    kept[3] = this.across;
    kept[4] = this.askew;
  }

  private lie(): void {
    const [cos, sin] = turnOf({ turn: this.start.turn, askew: this.askew });
    const across = this.start.isMirrored ? -this.across : this.across;
    this.a = this.along * cos;
    this.b = this.along * sin;
    this.c = -across * sin;
    this.d = across * cos;
    this.x = this.middleX - this.a * this.ownX - this.c * this.ownY;
    this.y = this.middleY - this.b * this.ownX - this.d * this.ownY;
  }
}
