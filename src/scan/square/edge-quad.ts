import type { Point } from "../../base/index.ts";
import type { Quad } from "../homography.ts";
import { coveredBetween, type EdgeLine, type SideName } from "./edge-lines.ts";
import { isConvex } from "./squaring.ts";
import { crossing } from "./straight-line.ts";

export interface EdgeQuad {
  readonly corners: Quad;
  /** 0 to 1: how fully its sides are seen, and how surely they end at its corners. */
  readonly quality: number;
}

/** Smaller ones, of the picture's area, are boxes on a page. */
const LEAST_AREA = 0.12;
const LEAST_COVERED = 0.5;
/** A side is looked for beyond its corners over this share of its length. */
const BEYOND = 0.08;
/** Corners may lie so far outside, of the picture's size: cut off by a hair. */
const OUTSIDE = 0.02;

/** The largest four-sided figure of long straight edges with its bright side inside; null for none. */
export function edgeQuadOf(
  lines: Readonly<Record<SideName, readonly EdgeLine[]>>,
  width: number,
  height: number,
): EdgeQuad | null {
  const corner = (a: EdgeLine, b: EdgeLine): Point | null => {
    const at = crossing(a, b);
    const isNear =
      at &&
      Math.abs(at[0] - width / 2) <= width * (0.5 + OUTSIDE) &&
      Math.abs(at[1] - height / 2) <= height * (0.5 + OUTSIDE);
    return isNear ? at : null;
  };
  const table = (a: readonly EdgeLine[], b: readonly EdgeLine[]) =>
    a.map((one) => b.map((other) => corner(one, other)));
  const { top, right, bottom, left } = lines;
  const [topLeft, topRight] = [table(top, left), table(top, right)];
  const [bottomLeft, bottomRight] = [table(bottom, left), table(bottom, right)];
  let [best, most]: [EdgeQuad | null, number] = [null, 0];
  top.forEach((above, t) => {
    bottom.forEach((below, b) => {
      left.forEach((west, l) => {
        const [nw, sw] = [topLeft[t]?.[l], bottomLeft[b]?.[l]];
        if (!nw || !sw || sw[1] <= nw[1] || coveredBetween(west, nw, sw) < LEAST_COVERED) return;
        right.forEach((east, r) => {
          const [ne, se] = [topRight[t]?.[r], bottomRight[b]?.[r]];
          if (!ne || !se) return;
          const corners: Quad = [nw, ne, se, sw];
          const area = areaOf(corners) / (width * height);
          if (area <= most || area < LEAST_AREA || !isConvex(corners)) return;
          const quality = qualityOf(corners, [above, east, below, west], width, height);
          if (area * quality * quality > most) {
            [best, most] = [{ corners, quality }, area * quality * quality];
          }
        });
      });
    });
  });
  return best;
}

function qualityOf(
  corners: Quad,
  sides: readonly EdgeLine[],
  width: number,
  height: number,
): number {
  let [least, all, beyond] = [1, 0, 0];
  for (let side = 0; side < 4; side++) {
    const [from, to] = [corners[side] as Point, corners[(side + 1) % 4] as Point];
    const line = sides[side] as EdgeLine;
    const covered = coveredBetween(line, from, to);
    if (covered < LEAST_COVERED) return 0;
    least = Math.min(least, covered);
    all += covered / 4;
    for (const [inner, outer] of [
      [from, to],
      [to, from],
    ] as const) {
      const end: Point = [
        inner[0] + (inner[0] - outer[0]) * BEYOND,
        inner[1] + (inner[1] - outer[1]) * BEYOND,
      ];
      const isShown = end[0] > 0 && end[1] > 0 && end[0] < width && end[1] < height;
      if (isShown) beyond += coveredBetween(line, inner, end) / 8;
    }
  }
  return Math.sqrt(least * all) * (1 - 0.6 * beyond);
}

export function areaOf(quad: Quad): number {
  return (
    quad.reduce((sum, [x, y], at) => {
      const [nextX, nextY] = quad[(at + 1) % 4] as Point;
      return sum + x * nextY - nextX * y;
    }, 0) / 2
  );
}
