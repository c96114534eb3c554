import type { Point } from "../../base/index.ts";
import type { Quad } from "../homography.ts";
import type { Grey } from "../raster.ts";
import { curveThrough } from "./side-curve.ts";

/** One side of a page or frame as the picture shows it, from one corner to the next, clockwise. */
export interface SidePoints {
  /** To a fraction of a pixel: of a page's edge the step, of a frame the middle of its line. */
  readonly points: readonly Point[];
  /** Share of the places looked at where it was found. */
  readonly found: number;
  /** Whether both sides of it are bright: a drawn line, and no edge of paper. */
  readonly isDrawn: boolean;
}

const PLACES = 160;
/** Corners themselves are rounded, torn and clipped. */
const SKIPPED = 0.03;
/** Grey levels that an edge steps at least over two pixels. */
const LEAST_STEP = 8;

/**
 * The four sides near given corners, looked for at right angles to each at full resolution, no
 * further than `reach` pixels away.
 */
export function sidePointsOf(grey: Grey, corners: Quad, reach: number): readonly SidePoints[] {
  return corners.map((from, side) => sideOf(grey, from, corners[(side + 1) % 4] as Point, reach));
}

function sideOf(grey: Grey, from: Point, to: Point, reach: number): SidePoints {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(length >= 16)) return { points: [], found: 0, isDrawn: false };
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const inward: Point = [-along[1], along[0]];
  const profile = new Float64Array(2 * reach + 1);
  const places: number[] = [];
  const steps: number[] = [];
  let drawn = 0;
  for (let n = 0; n < PLACES; n++) {
    const place = length * (SKIPPED + ((1 - 2 * SKIPPED) * n) / (PLACES - 1));
    const at: Point = [from[0] + along[0] * place, from[1] + along[1] * place];
    if (!fillProfile(profile, grey, at, along, inward)) continue;
    const edge = edgeIn(profile);
    if (!edge) continue;
    places.push(place);
    steps.push(edge.at - reach);
    if (edge.isDrawn) drawn++;
  }
  const isOn = curveThrough(places, steps, length, reach);
  const points = places.flatMap((place, n): Point[] => {
    const step = steps[n] as number;
    if (!isOn[n]) return [];
    return [
      [
        from[0] + along[0] * place + inward[0] * step,
        from[1] + along[1] * place + inward[1] * step,
      ],
    ];
  });
  return { points, found: points.length / PLACES, isDrawn: 2 * drawn > places.length };
}

/** Brightness from outside to inside, each the mean of three places along the side. */
function fillProfile(
  profile: Float64Array,
  grey: Grey,
  at: Point,
  along: Point,
  inward: Point,
): boolean {
  const reach = (profile.length - 1) / 2;
  let isShown = false;
  for (let step = -reach; step <= reach; step++) {
    let sum = 0;
    for (let beside = -1; beside <= 1; beside++) {
      const x = at[0] + inward[0] * step + along[0] * 1.5 * beside;
      const y = at[1] + inward[1] * step + along[1] * 1.5 * beside;
      if (x < 0 || y < 0 || x > grey.width - 1 || y > grey.height - 1) sum = Number.NaN;
      else sum += between(grey, x, y);
    }
    profile[step + reach] = sum / 3;
    isShown ||= !Number.isNaN(sum);
  }
  return isShown;
}

function between({ width, height, data }: Grey, x: number, y: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [right, bottom] = [Math.min(width - 1, left + 1), Math.min(height - 1, top + 1)];
  const value = (column: number, row: number) => data[row * width + column] as number;
  const upper = value(left, top) * (left + 1 - x) + value(right, top) * (x - left);
  const lower = value(left, bottom) * (left + 1 - x) + value(right, bottom) * (x - left);
  return upper * (top + 1 - y) + lower * (y - top);
}

/** The steepest step to bright in a profile, or the middle of the dark line that ends with it. */
function edgeIn(profile: Float64Array): { at: number; isDrawn: boolean } | null {
  const slope = (at: number) => (profile[at + 1] as number) - (profile[at - 1] as number);
  let [best, most] = [-1, LEAST_STEP];
  for (let at = 1; at < profile.length - 1; at++) {
    if (slope(at) > most) [best, most] = [at, slope(at)];
  }
  if (best < 2 || best > profile.length - 3) return null;
  const inside = levelOf(profile, best + 2, profile.length);
  // The darkest place just outside the step is its foot: the table, or the middle of a line.
  let foot = best;
  while (foot > 0 && (profile[foot - 1] as number) < (profile[foot] as number)) foot--;
  const dark = profile[foot] as number;
  const half = (inside + dark) / 2;
  let outer = foot;
  while (outer >= 0 && (profile[outer] as number) < half) outer--;
  // A drawn line is bright again beyond; outside the picture nothing is.
  if (outer >= 0 && (profile[outer] as number) >= half) {
    let inner = foot;
    while (inner < profile.length - 1 && (profile[inner] as number) < half) inner++;
    let [sum, weights] = [0, 0];
    for (let at = outer; at <= inner; at++) {
      const weight = Math.max(0, inside - (profile[at] as number));
      sum += weight * at;
      weights += weight;
    }
    if (weights > 0) return { at: sum / weights, isDrawn: true };
  }
  const [before, after] = [slope(best - 1), slope(best + 1)];
  const curve = before - 2 * most + after;
  const shift = curve < 0 ? (before - after) / (2 * curve) : 0;
  return { at: best + Math.max(-0.5, Math.min(0.5, shift)), isDrawn: false };
}

function levelOf(profile: Float64Array, from: number, to: number): number {
  const values = profile
    .slice(from, to)
    .filter((value) => !Number.isNaN(value))
    .sort();
  return values[values.length >> 1] ?? 255;
}
