import type { Point } from "../../base/index.ts";

/** A straight line that goes on for ever: a point of it, and the way it runs, length 1. */
export interface FittedLine {
  readonly at: Point;
  readonly along: Point;
}

/** Pixels in order, x and y apart. */
export interface Track {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

/** A stretch of a track, both ends in it. */
export type Span = readonly [first: number, last: number];

/**
 * The line with the least squares of distances to the pixels of some spans, fitted again without those
 * that lie farther than `stray` from the first: bumps of the ink. Null where there are fewer than two.
 */
export function lineThrough(
  track: Track,
  spans: readonly Span[],
  stray: number,
): FittedLine | null {
  const first = leastSquares(track, spans, null, 0);
  if (!first) return null;
  return leastSquares(track, spans, first, stray) ?? first;
}

function leastSquares(
  { xs, ys }: Track,
  spans: readonly Span[],
  near: FittedLine | null,
  stray: number,
): FittedLine | null {
  let [count, sumX, sumY, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
  const [originX, originY] = [xs[spans[0]?.[0] ?? 0] as number, ys[spans[0]?.[0] ?? 0] as number];
  for (const [from, to] of spans) {
    for (let n = from; n <= to; n++) {
      const x = (xs[n] as number) - originX;
      const y = (ys[n] as number) - originY;
      if (near) {
        const dx = x + originX - near.at[0];
        const dy = y + originY - near.at[1];
        if (Math.abs(dx * near.along[1] - dy * near.along[0]) > stray) continue;
      }
      count++;
      sumX += x;
      sumY += y;
      xx += x * x;
      xy += x * y;
      yy += y * y;
    }
  }
  if (count < 2) return null;
  const [x, y] = [sumX / count, sumY / count];
  const [varX, cov, varY] = [xx / count - x * x, xy / count - x * y, yy / count - y * y];
  if (varX + varY === 0) return null;
  const angle = Math.atan2(2 * cov, varX - varY) / 2;
  const along: Point = [Math.cos(angle), Math.sin(angle)];
  const [start, end] = [spans[0]?.[0] ?? 0, spans.at(-1)?.[1] ?? 0];
  const runs =
    ((xs[end] as number) - (xs[start] as number)) * along[0] +
    ((ys[end] as number) - (ys[start] as number)) * along[1];
  return {
    at: [x + originX, y + originY],
    along: runs < 0 ? [-along[0], -along[1]] : along,
  };
}

/** How far a point lies to the right of a line, pixels. */
export const offsetFrom = ({ at, along }: FittedLine, [x, y]: Point): number =>
  (y - at[1]) * along[0] - (x - at[0]) * along[1];

/** The point of a line that is nearest to another. */
export function ontoLine({ at, along }: FittedLine, [x, y]: Point): Point {
  const far = (x - at[0]) * along[0] + (y - at[1]) * along[1];
  return [at[0] + far * along[0], at[1] + far * along[1]];
}

/** Where two lines cross; null where they run within some four degrees of one another. */
export function crossingOf(a: FittedLine, b: FittedLine): Point | null {
  const cross = a.along[0] * b.along[1] - a.along[1] * b.along[0];
  if (Math.abs(cross) < 0.07) return null;
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const far = (dx * b.along[1] - dy * b.along[0]) / cross;
  // A level or upright line keeps its place to the last digit.
  return [
    b.along[0] === 0 ? b.at[0] : a.at[0] + far * a.along[0],
    b.along[1] === 0 ? b.at[1] : a.at[1] + far * a.along[1],
  ];
}

/** Degrees by which a line turns into another, 0 to 180. */
export function turnBetween(a: FittedLine, b: FittedLine): number {
  const cos = a.along[0] * b.along[0] + a.along[1] * b.along[1];
  return (Math.acos(Math.min(1, Math.max(-1, cos))) * 180) / Math.PI;
}
