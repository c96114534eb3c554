import type { Point } from "../../base/index.ts";
import type { Rgba } from "../raster.ts";
import { adapterFrom, labOf, type Xyz, xyzOf } from "./adaptation.ts";
import type { Lab } from "./colour-difference.ts";

/**
 * The surroundings of a spot on a wire, turned so that the wire runs along the rows: row 0 is the
 * farthest across on one side. Colours are L*a*b* as under D65.
 */
export interface WireStrip {
  /** Samples along the wire. */
  readonly length: number;
  /** Samples across it, an odd number: the spot lies in the middle. */
  readonly breadth: number;
  readonly lab: readonly Lab[];
  /** 1 where the picture is too bright to tell a colour, or ends. */
  readonly lost: Uint8Array;
}

/** Lengths of the strip in radii of the spot, each way. */
const ALONG = 2.5;
const ACROSS = 4.6;
/** How far the picture must reach around the spot, in its radii. */
export const STRIP_REACH = 5.3;
/** A byte from which on a channel is taken as clipped. */
const CLIPPED = 252;

/** `reach`: radius of the spot, pixels; about half the breadth of the wire. */
export function wireStrip(picture: Rgba, at: Point, reach: number, white: Xyz): WireStrip {
  const [dx, dy] = directionAt(picture, at, 2.5 * reach);
  const along = Math.max(4, Math.round(ALONG * reach));
  const across = Math.max(5, Math.round(ACROSS * reach));
  const [length, breadth] = [2 * along + 1, 2 * across + 1];
  const adapted = adapterFrom(white);
  const lab: Lab[] = [];
  const lost = new Uint8Array(length * breadth);
  const { width, height, data } = picture;
  for (let t = -across; t <= across; t++)
    for (let s = -along; s <= along; s++) {
      const x = Math.round(at[0] + s * dx - t * dy);
      const y = Math.round(at[1] + s * dy + t * dx);
      if (x < 0 || y < 0 || x >= width || y >= height) {
        lost[lab.length] = 1;
        lab.push([0, 0, 0]);
        continue;
      }
      const from = 4 * (y * width + x);
      const [red, green, blue] = [data[from], data[from + 1], data[from + 2]] as [
        number,
        number,
        number,
      ];
      // One full channel is a strong colour; two of them, and brightness is lost.
      const full = [red, green, blue].filter((one) => one >= CLIPPED).length;
      if (full > 1) lost[lab.length] = 1;
      lab.push(labOf(adapted(xyzOf(red, green, blue))));
    }
  return { length, breadth, lab, lost };
}

/**
 * The direction in which brightness and colour change least around a spot: along the wire. From the
 * structure tensor, the second moments of the slopes of all three channels.
 */
function directionAt({ width, height, data }: Rgba, at: Point, reach: number): Point {
  let [xx, xy, yy] = [0, 0, 0];
  for (let y = Math.max(1, Math.ceil(at[1] - reach)); y < Math.min(height - 1, at[1] + reach); y++)
    for (
      let x = Math.max(1, Math.ceil(at[0] - reach));
      x < Math.min(width - 1, at[0] + reach);
      x++
    ) {
      const off = Math.hypot(x - at[0], y - at[1]) / reach;
      if (off > 1) continue;
      const weight = 1 - off * off;
      const from = 4 * (y * width + x);
      for (let i = 0; i < 3; i++) {
        const gx = (data[from + 4 + i] as number) - (data[from - 4 + i] as number);
        const gy = (data[from + 4 * width + i] as number) - (data[from - 4 * width + i] as number);
        xx += weight * gx * gx;
        xy += weight * gx * gy;
        yy += weight * gy * gy;
      }
    }
  // The direction of the strongest change, turned by a right angle.
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy) + Math.PI / 2;
  return [Math.cos(angle), Math.sin(angle)];
}

/** Across the wire: the middle colour of each row; null where nothing can be told. */
export function profileOf({ length, breadth, lab, lost }: WireStrip): readonly (Lab | null)[] {
  return Array.from({ length: breadth }, (_, row) => {
    const seen: Lab[] = [];
    for (let at = row * length; at < (row + 1) * length; at++) {
      if (!lost[at]) seen.push(lab[at] as Lab);
    }
    return seen.length < length / 3 ? null : middleColour(seen);
  });
}

/** The median of each of the three. */
export function middleColour(colours: readonly Lab[]): Lab {
  const middle = (i: 0 | 1 | 2) =>
    colours.map((one) => one[i]).toSorted((one, other) => one - other)[
      colours.length >> 1
    ] as number;
  return [middle(0), middle(1), middle(2)];
}
