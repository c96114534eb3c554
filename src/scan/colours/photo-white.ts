import type { Point } from "../../base/index.ts";
import type { Rgba } from "../raster.ts";
import { D65, type Xyz, xyzOf, xyzOfLinear } from "./adaptation.ts";
import { type Cell, cellsOf } from "./cells.ts";
import { greyEdge } from "./grey-edge.ts";

/** What a white surface comes out as in a photo. */
export interface PhotoWhite {
  readonly xyz: Xyz;
  /**
   * `tapped`: where somebody said that it is white. `neutral`: the brightest area that may be white or
   * grey. `edges`: from the colour of all edges together. `none`: nothing to go by, taken as the camera
   * left it.
   */
  readonly from: "tapped" | "neutral" | "edges" | "none";
  /** Whether it may well be wrong, so that no colour seen under it is sure. */
  readonly isDoubtful: boolean;
}

/** Share of the light that a sheet of paper or a white label gives back. From memory. */
const PAPER = 0.85;
/** Nothing larger than this in any channel is told apart from full: it may have been clipped. */
const FULL = 250;

/** The white from a spot that somebody knows to be white; null where it is too dark or too bright to tell. */
export function whiteAt(picture: Rgba, at: Point, reach: number): PhotoWhite | null {
  const { width, height, data } = picture;
  const sum = [0, 0, 0];
  let [count, seen] = [0, 0];
  for (let y = Math.max(0, Math.ceil(at[1] - reach)); y <= Math.min(height - 1, at[1] + reach); y++)
    for (
      let x = Math.max(0, Math.ceil(at[0] - reach));
      x <= Math.min(width - 1, at[0] + reach);
      x++
    ) {
      if (Math.hypot(x - at[0], y - at[1]) > reach) continue;
      seen++;
      const from = 4 * (y * width + x);
      const [red, green, blue] = [data[from], data[from + 1], data[from + 2]] as [
        number,
        number,
        number,
      ];
      if (Math.max(red, green, blue) > FULL) continue;
      const xyz = xyzOf(red, green, blue);
      for (let i = 0; i < 3; i++) sum[i] = (sum[i] as number) + (xyz[i] as number);
      count++;
    }
  if (seen === 0 || count < seen / 3) return null;
  const xyz: Xyz = [0, 1, 2].map((i) => (sum[i] as number) / count / PAPER) as unknown as Xyz;
  if (xyz[1] < LEAST_LIGHT) return null;
  return { xyz, from: "tapped", isDoubtful: false };
}

/** Y under which a spot is too dark to tell its colour. */
const LEAST_LIGHT = 0.05;

/**
 * Logarithms of red and blue against green (linear sRGB) that lamps, sun and sky give a white surface
 * after a camera's own balance, or without it: from a north sky of about 10000 K, (-0.13, 0.36), over
 * D65, (0, 0), to illuminant A, (0.80, -1.27), all worked out from CIE 15's chromaticities.
 */
const LIGHTS = [
  [-0.13, 0.36],
  [0, 0],
  [0.8, -1.27],
] as const;
/** How far from that line a light may lie: fluorescent lamps are greener, skies bluer. */
const OFF_LINE = 0.22;

/** Degrees between two estimates of the light past which neither is trusted. */
const APART = 7;
/** Share of the photo that a neutral area must have to be trusted. */
const LEAST_SHARE = 0.004;
/** Y of the brightest neutral area under which it may as well be a grey. */
const BRIGHT = 0.3;
/** Of the candidates the brightest share that is taken together. */
const BRIGHTEST = 0.1;

/**
 * The white of a photo, from some hundred pixels a side of it: its brightest even area that can be a
 * white or grey one, held against grey-edge (van de Weijer, Gevers, Gijsenij 2007: what all edges add
 * up to is grey).
 */
export function estimateWhite(photo: Rgba): PhotoWhite {
  const cells = cellsOf(photo, FULL);
  const edge = greyEdge(photo, FULL);
  const even = cells
    .filter((cell) => cell.isEven && cell.light > LEAST_LIGHT && isLight(cell.rgb))
    .toSorted((one, other) => other.light - one.light);
  const level = levelOf(cells);
  const top = even[0]?.light ?? 0;
  // An area much darker than the brightest one is no white, only grey, beside it.
  const near = even.filter((cell) => cell.light > 0.7 * top);
  const taken = near.slice(0, Math.max(3, Math.ceil(near.length * BRIGHTEST)));
  if (taken.length >= 3) {
    const rgb = ([0, 1, 2] as const).map((i) =>
      middle(taken.map((cell) => cell.rgb[i])),
    ) as unknown as Xyz;
    const agrees = edge !== null && degreesBetween(rgb, edge) <= APART;
    const share = near.length / Math.max(1, cells.length);
    return {
      xyz: scaledTo(rgb, Math.max(level, top / PAPER)),
      from: "neutral",
      isDoubtful: !agrees || share < LEAST_SHARE || top < BRIGHT || top < 0.5 * level,
    };
  }
  if (edge !== null && isLight(edge))
    return { xyz: scaledTo(edge, level), from: "edges", isDoubtful: true };
  return { xyz: scaledTo([1, 1, 1], level), from: "none", isDoubtful: true };
}

/** Whether some usual light gives a white surface this colour, linear sRGB. */
function isLight(rgb: Xyz): boolean {
  const at: Point = [Math.log(rgb[0] / rgb[1]), Math.log(rgb[2] / rgb[1])];
  return LIGHTS.some((from, index) => {
    const to = LIGHTS[index + 1];
    if (!to) return false;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const along = ((at[0] - from[0]) * dx + (at[1] - from[1]) * dy) / (dx * dx + dy * dy);
    const on = Math.min(1, Math.max(0, along));
    return Math.hypot(at[0] - from[0] - on * dx, at[1] - from[1] - on * dy) <= OFF_LINE;
  });
}

/** The light of the brightest things, Y: nearly the brightest cell. */
function levelOf(cells: readonly Cell[]): number {
  const lights = cells.map((cell) => cell.light).toSorted((one, other) => one - other);
  return Math.max(0.1, lights[Math.floor(lights.length * 0.98)] ?? 1);
}

const middle = (values: readonly number[]) =>
  values.toSorted((one, other) => one - other)[values.length >> 1] ?? 0;

/** XYZ of a colour in linear sRGB, brought to a Y. */
function scaledTo(rgb: Xyz, light: number): Xyz {
  const xyz = xyzOfLinear(rgb);
  const by = xyz[1] > 0 ? light / xyz[1] : 0;
  return by > 0 ? [xyz[0] * by, xyz[1] * by, xyz[2] * by] : [...D65];
}

/** The usual measure of how far two estimates of a light are apart. */
function degreesBetween(one: Xyz, other: Xyz): number {
  const cosine =
    (one[0] * other[0] + one[1] * other[1] + one[2] * other[2]) /
    (Math.hypot(...one) * Math.hypot(...other));
  return (Math.acos(Math.min(1, cosine)) * 180) / Math.PI;
}
