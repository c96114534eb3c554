import type { Point } from "../../base/index.ts";
import type { Quad } from "../homography.ts";
import type { Grey } from "../raster.ts";

export type PictureSide = "top" | "right" | "bottom" | "left";

const SIDES: readonly PictureSide[] = ["top", "right", "bottom", "left"];

/** Places that are looked at along each side of the picture. */
const LOOKS = 80;
/** Of each side this share must be as light as the paper: a corner of other paper is no page. */
const LEAST_SHARE = 0.2;
/** As light as paper, to the paper that is nearest. */
const AS_LIGHT = 0.93;
/** Shares of the picture: how far from its edge, and how far inside the corners, is looked. */
const AT_EDGE = 0.004;
const INSIDE = 0.04;
/** Half of the square that is looked at in one place, a share of the picture's longer side. */
const SPOT = 0.004;

/**
 * The sides of the picture at which the page that was found goes on beyond it: the picture's own edge
 * is as light there as the page beside it, where a table would be darker.
 */
export function sidesCutOff(grey: Grey, corners: Quad): readonly PictureSide[] {
  const { width, height } = grey;
  const longer = Math.max(width, height);
  const edge = Math.ceil(AT_EDGE * longer);
  const middle: Point = [
    corners.reduce((sum, [x]) => sum + x, 0) / 4,
    corners.reduce((sum, [, y]) => sum + y, 0) / 4,
  ];
  return SIDES.filter((side, n) => {
    const [a, b] = [corners[n] as Point, corners[(n + 1) % 4] as Point];
    let light = 0;
    for (let look = 0; look < LOOKS; look++) {
      const share = (look + 0.5) / LOOKS;
      const at = placeOn(side, share, width, height, edge);
      // Clockwise the corners of the lower and the left side come from their far ends.
      const along = n < 2 ? share : 1 - share;
      const onSide: Point = [a[0] + along * (b[0] - a[0]), a[1] + along * (b[1] - a[1])];
      const paper = lightestAt(grey, towards(onSide, middle, INSIDE * longer));
      if (paper > 0 && lightestAt(grey, at) >= AS_LIGHT * paper) light++;
    }
    return light >= LEAST_SHARE * LOOKS;
  });
}

function placeOn(
  side: PictureSide,
  share: number,
  width: number,
  height: number,
  edge: number,
): Point {
  switch (side) {
    case "top":
      return [share * width, edge];
    case "right":
      return [width - 1 - edge, share * height];
    case "bottom":
      return [share * width, height - 1 - edge];
    case "left":
      return [edge, share * height];
  }
}

function towards([x, y]: Point, [toX, toY]: Point, by: number): Point {
  const far = Math.hypot(toX - x, toY - y) || 1;
  return [x + (by * (toX - x)) / far, y + (by * (toY - y)) / far];
}

/** The lightest of a small square, which no line of a drawing fills; 0 outside of the picture. */
function lightestAt({ width, height, data }: Grey, [x, y]: Point): number {
  const half = Math.max(2, Math.round(SPOT * Math.max(width, height)));
  const [left, top] = [Math.max(0, Math.round(x) - half), Math.max(0, Math.round(y) - half)];
  const [right, bottom] = [
    Math.min(width - 1, Math.round(x) + half),
    Math.min(height - 1, Math.round(y) + half),
  ];
  let lightest = 0;
  for (let row = top; row <= bottom; row++) {
    for (let at = row * width + left; at <= row * width + right; at++)
      lightest = Math.max(lightest, data[at] as number);
  }
  return lightest;
}
