import type { Point } from "../../base/index.ts";
import type { Lab } from "./colour-difference.ts";
import { middleColour } from "./wire-surroundings.ts";

/** A piece of a wire straightened out, so that it runs along the rows: colours as under D65. */
export interface WireStrip {
  /** Samples along the wire. */
  readonly length: number;
  /** Samples across it, `ROWS`. */
  readonly breadth: number;
  /** Null where the picture is too bright to tell a colour, or ends. */
  readonly lab: readonly (Lab | null)[];
  /** Whether the wire is seen far enough both ways for a stripe that winds round it. */
  readonly isLong: boolean;
}

/** Where a wire lies: a point in its middle, which way it runs (radians), half its breadth, in pixels. */
export interface WirePlace {
  readonly at: Point;
  readonly angle: number;
  readonly half: number;
}

/** Samples across a wire. */
const ROWS = 29;
/** Half breadths of the wire that are looked at along it, each way. */
const ALONG = 4;
/** Half breadths that must be seen each way beyond the middle for a wound stripe not to be missed. */
const LEAST = 2.2;
/** Samples to each side beyond the wire's edges by which its way is followed. */
const BESIDE = 4;
/** Columns taken together when it is followed. */
const BLOCK = 4;
/** Mean distance in L*a*b* past which a block no longer shows the same wire; one sample counts no more than `MOST`. */
const LOST = 13;
const MOST = 30;
/** Blocks that may look otherwise if the wire goes on behind them: a wound stripe crosses there. */
const PATIENCE = 5;

/** The wire round a spot, as far along as it goes on looking the same in breadth, its bends taken out. */
export function wireStrip(
  sample: (x: number, y: number) => Lab | null,
  { at, angle, half }: WirePlace,
  most: number,
): WireStrip {
  const step = (2 * half) / (ROWS - 1);
  const [dx, dy] = [Math.cos(angle) * step, Math.sin(angle) * step];
  const middle = ROWS >> 1;
  const column = (s: number, shift: number): readonly (Lab | null)[] =>
    Array.from({ length: ROWS + 2 * BESIDE }, (_, row) => {
      const t = row - BESIDE - middle + shift;
      return sample(at[0] + s * dx - t * dy, at[1] + s * dy + t * dx);
    });
  const blockAt = (s: number, shift: number) =>
    Array.from({ length: BLOCK }, (_, n) => column(s + n, shift));
  const begun = [-2, -1, 0, 1].flatMap((n) => blockAt(n * BLOCK, 0));
  const usual = Array.from({ length: ROWS + 2 * BESIDE }, (_, row) => {
    const seen = begun.flatMap((one) => (one[row] ? [one[row] as Lab] : []));
    return seen.length > 0 ? middleColour(seen) : null;
  });
  const blocks = Math.max(2, Math.floor(Math.min(ALONG * half, most) / step / BLOCK));
  const walk = (side: 1 | -1) => {
    const found: (readonly (Lab | null)[])[][] = [];
    let shift = 0;
    let unlike: typeof found = [];
    for (let n = 2; n < blocks && unlike.length <= PATIENCE; n++) {
      const s = side === 1 ? n * BLOCK : -(n + 1) * BLOCK;
      const tried = [0, -1, 1].map((by) => {
        const columns = blockAt(s, shift + by);
        return { by, columns, off: apart(columns, usual) };
      });
      const best = tried.reduce((one, other) => (other.off < one.off - 0.3 ? other : one));
      if (best.off > LOST) {
        unlike.push(blockAt(s, shift));
        continue;
      }
      shift += best.by;
      found.push(...unlike, best.columns);
      unlike = [];
    }
    // From left to right, whichever way they were found.
    return side === 1 ? found.flat() : found.toReversed().flat();
  };
  const [before, after] = [walk(-1), walk(1)];
  const columns = [...before, ...begun, ...after];
  const lab = Array.from({ length: ROWS }, (_, row) =>
    columns.map((one) => one[row + BESIDE] ?? null),
  ).flat();
  const shorter = Math.min(before.length, after.length) * step;
  return { length: columns.length, breadth: ROWS, lab, isLong: shorter >= LEAST * half };
}

function apart(
  columns: readonly (readonly (Lab | null)[])[],
  usual: readonly (Lab | null)[],
): number {
  let [sum, count] = [0, 0];
  for (const column of columns)
    column.forEach((one, row) => {
      const other = usual[row];
      if (!one || !other) return;
      sum += Math.min(
        MOST,
        Math.hypot((one[0] - other[0]) / 2, one[1] - other[1], one[2] - other[2]),
      );
      count++;
    });
  return count > 0 ? sum / count : Number.POSITIVE_INFINITY;
}
