import { STEPS_PER_PIXEL } from "../distance.ts";
import type { Matrix } from "./pose.ts";
import type { Sampled } from "./sampled.ts";
import type { SymbolPage } from "./symbol-page.ts";

/** A point this near to a line lies on it, and one this far does not, in line widths and pixels. */
export const ON = 0.4;
const OFF = 0.85;
export const PIXEL = 0.5;
/** ... and what draughtsmen differ by, units. */
export const SLACK = 0.05;
/** Beyond it a point is just off, in line widths: nearer ones lead the way to where the symbol fits. */
const FARTHEST = 2.5;
/** Slacks are told apart in steps of so many of a line's width. */
const SLACKS = 16;
/** How far a point may come to be moved, line widths, and by stretching, units. */
const AWAY = 1.3;
const STRETCHED = 0.15;
/** Distances that a byte can tell. */
const BYTE = 256;

/** Of every distance to a line how well a point lies there, and how far off that counts. */
interface Tables {
  readonly good: Float32Array;
  /** Line widths. */
  readonly off: Float32Array;
}

/** Holds symbols' points against a page. What the last one came to stands in its fields. */
export class PointMarks {
  /** Share of all points that lie well. */
  mean = 0;
  /** Of the worst stroke, leads left out. */
  least = 0;
  /** Of the worst lead; 1 where there is none. */
  leads = 0;
  /** How far the points lie from a line on average, in line widths. */
  off = 0;
  private readonly page: SymbolPage;
  private readonly tables: (Tables | undefined)[] = [];
  private readonly sums = new Float64Array(256);

  constructor(page: SymbolPage) {
    this.page = page;
  }

  /**
   * Holds points against the page as a pose places them, `unit` pixels to their unit; false, and nothing
   * said, as soon as their mean can't come to `enough`.
   */
  hold(sampled: Sampled, { x, y, a, b, c, d }: Matrix, unit: number, enough: number): boolean {
    const { xs, ys, strokeOf, strokes, counts, inInk } = sampled;
    const { near, ink, width, height } = this.page;
    const { good, off } = this.tablesFor(unit);
    const { sums } = this;
    const most = (1 - enough) * xs.length;
    let lost = 0;
    let away = 0;
    sums.fill(0, 0, strokes.length);
    for (let n = 0; n < xs.length; n++) {
      const [px, py] = [xs[n] as number, ys[n] as number];
      const column = x + a * px + c * py + 0.5;
      const row = y + b * px + d * py + 0.5;
      let share = 0;
      if (column >= 0 && row >= 0 && column < width && row < height) {
        const at = (row | 0) * width + (column | 0);
        if (inInk[n]) share = ink.data[at] as number;
        else {
          const far = near[at] as number;
          share = good[far] as number;
          away += off[far] as number;
        }
      } else if (!inInk[n]) away += off[BYTE - 1] as number;
      lost += 1 - share;
      if (lost > most) return false;
      const stroke = strokeOf[n] as number;
      sums[stroke] = (sums[stroke] as number) + share;
    }
    let [least, leads] = [1, 1];
    for (let n = 0; n < strokes.length; n++) {
      if (counts[n] === 0) continue;
      const share = (sums[n] as number) / (counts[n] as number);
      if (strokes[n] === "lead") leads = Math.min(leads, share);
      // A line along its middle is half of what is to be filled.
      else least = Math.min(least, strokes[n] === "fill" ? 2 * share - 1 : share);
    }
    this.mean = 1 - lost / xs.length;
    this.least = least;
    this.leads = leads;
    this.off = away / xs.length;
    return true;
  }

  /**
   * Whether a symbol may come to so much of all points, of its worst stroke and of its worst lead where
   * it is moved and stretched a little: there must be ink so near to its points.
   */
  mayComeTo(
    sampled: Sampled,
    { x, y, a, b, c, d }: Matrix,
    unit: number,
    needs: { readonly mean: number; readonly least: number; readonly leads: number },
  ): boolean {
    const { xs, ys, strokeOf, strokes, counts, inInk } = sampled;
    const { near, ink, width, height, line } = this.page;
    const { sums } = this;
    const reach = STEPS_PER_PIXEL * (AWAY * line + PIXEL + STRETCHED * unit);
    let open = Math.floor((1 - needs.mean) * xs.length);
    sums.fill(0, 0, strokes.length);
    for (let n = 0; n < xs.length; n++) {
      const [px, py] = [xs[n] as number, ys[n] as number];
      const column = x + a * px + c * py + 0.5;
      const row = y + b * px + d * py + 0.5;
      let isNear = false;
      if (column >= 0 && row >= 0 && column < width && row < height) {
        const at = (row | 0) * width + (column | 0);
        isNear = (near[at] as number) <= reach || (inInk[n] === 1 && ink.data[at] === 1);
      }
      if (isNear) {
        const own = strokeOf[n] as number;
        sums[own] = (sums[own] as number) + 1;
      } else if (--open < 0) return false;
    }
    for (let n = 0; n < strokes.length; n++) {
      const least = (strokes[n] === "lead" ? needs.leads : needs.least) * (counts[n] as number);
      if ((sums[n] as number) < least) return false;
    }
    return true;
  }

  private tablesFor(unit: number): Tables {
    const { line } = this.page;
    const slack = Math.min(SLACKS, Math.round((SLACKS * SLACK * unit) / line));
    let tables = this.tables[slack];
    if (!tables) {
      tables = tablesOf(line, (slack / SLACKS) * line);
      this.tables[slack] = tables;
    }
    return tables;
  }
}

function tablesOf(line: number, slack: number): Tables {
  const on = ON * line + PIXEL;
  const off = OFF * line + PIXEL + slack;
  const far = (byte: number) => byte / STEPS_PER_PIXEL;
  return {
    good: Float32Array.from({ length: BYTE }, (_, byte) =>
      Math.min(1, Math.max(0, (off - far(byte)) / (off - on))),
    ),
    off: Float32Array.from({ length: BYTE }, (_, byte) => Math.min(far(byte) / line, FARTHEST)),
  };
}
