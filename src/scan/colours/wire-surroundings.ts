import type { Point } from "../../base/index.ts";
import type { Lab } from "./colour-difference.ts";

/** Samples to a radius of the spot. */
export const GRAIN = 6;
/** How far from the spot anything is looked for, radii of the spot. */
export const ROOM = 14;

/** What lies round a spot, coarsely: colours as under D65, `GRAIN` to a radius of the spot, the spot in the middle. */
export interface Surroundings {
  /** Samples a side, an odd number. */
  readonly side: number;
  readonly lab: readonly (Lab | null)[];
}

export function surroundingsOf(
  sample: (x: number, y: number) => Lab | null,
  at: Point,
  reach: number,
): Surroundings {
  const most = ROOM * GRAIN;
  const step = reach / GRAIN;
  const lab: (Lab | null)[] = [];
  for (let y = -most; y <= most; y++)
    for (let x = -most; x <= most; x++) lab.push(sample(at[0] + x * step, at[1] + y * step));
  return { side: 2 * most + 1, lab };
}

const colourAt = ({ side, lab }: Surroundings, x: number, y: number): Lab | null => {
  const middle = side >> 1;
  const [column, row] = [middle + Math.round(x), middle + Math.round(y)];
  if (column < 0 || row < 0 || column >= side || row >= side) return null;
  return lab[row * side + column] ?? null;
};

/** How far the way a wire runs is looked at, radii of the spot to each side. */
const WINDOW = 5;
/** Lightness counts less than hue: a round wire is dark at its sides. */
const LIGHTNESS = 0.5;

/**
 * Which way a wire runs: the direction along which colours change least for how much they change across
 * it (the share of the squared spread that lies between rows). Radians.
 */
export function wireDirection(around: Surroundings): number {
  const step = Math.PI / 24;
  const turns = Array.from({ length: 24 }, (_, n) => n * step);
  const best = (angles: readonly number[]) =>
    angles
      .map((angle) => ({ angle, share: shareBetweenRows(around, angle) }))
      .reduce((one, other) => (other.share > one.share ? other : one)).angle;
  const rough = best(turns);
  const near = [-0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75];
  return best(near.map((off) => rough + off * step));
}

function shareBetweenRows(around: Surroundings, angle: number): number {
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const most = WINDOW * GRAIN;
  const all = { count: 0, sum: [0, 0, 0], squares: 0 };
  let between = 0;
  for (let t = -most; t <= most; t += 2) {
    const sum = [0, 0, 0];
    let count = 0;
    for (let s = -most; s <= most; s += 3) {
      const colour = colourAt(around, s * dx - t * dy, s * dy + t * dx);
      if (!colour) continue;
      count++;
      for (let i = 0; i < 3; i++) {
        const value = (i === 0 ? LIGHTNESS : 1) * (colour[i as 0] as number);
        sum[i] = (sum[i] as number) + value;
        all.sum[i] = (all.sum[i] as number) + value;
        all.squares += value * value;
      }
    }
    all.count += count;
    if (count > 0) between += sum.reduce((of, one) => of + (one * one) / count, 0);
  }
  if (all.count === 0) return 0;
  const mean = all.sum.reduce((of, one) => of + (one * one) / all.count, 0);
  return (between - mean) / Math.max(1e-6, all.squares - mean);
}

/** How far along the wire a row is looked at, radii of the spot to each side. */
const ALONG = 2.5;

/** Across the wire, `GRAIN` rows to a radius, the spot in the middle one: the middle colour of each row. */
export function profileAcross(around: Surroundings, angle: number): readonly (Lab | null)[] {
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const [most, along] = [ROOM * GRAIN, ALONG * GRAIN];
  return Array.from({ length: 2 * most + 1 }, (_, row) => {
    const t = row - most;
    const seen: Lab[] = [];
    for (let s = -along; s <= along; s++) {
      const colour = colourAt(around, s * dx - t * dy, s * dy + t * dx);
      if (colour) seen.push(colour);
    }
    return seen.length < along ? null : middleColour(seen);
  });
}

/** The median of each of the three. */
export function middleColour(colours: readonly Lab[]): Lab {
  const middle = (i: 0 | 1 | 2) =>
    Float64Array.from(colours, (one) => one[i]).sort()[colours.length >> 1] as number;
  return [middle(0), middle(1), middle(2)];
}
