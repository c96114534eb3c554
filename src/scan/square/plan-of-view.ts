import type { Box } from "../../base/index.ts";
import type { Homography } from "../homography.ts";
import type { SquaringPlan } from "./squaring.ts";

/** What of a result is looked at: a box of its pixels, edges inside, so many pixels for each of them. */
export interface ResultView {
  readonly box: Box;
  readonly scale: number;
}

/** A cut-out of a picture at another size: its first pixel's left and top edge, and pixels for each one. */
export interface SourceCut {
  readonly left: number;
  readonly top: number;
  readonly scale: number;
}

/**
 * The plan by which a view of the result is made from a cut-out of the picture: for looks at a screen's
 * size and for close ones, neither of which needs the whole.
 */
export function planOfView(plan: SquaringPlan, view: ResultView, source: SourceCut): SquaringPlan {
  const { box, scale } = view;
  const [a, b, c, d, e, f, g, h] = plan.toStraight;
  const wide = box.right - box.left + 1;
  const high = box.bottom - box.top + 1;
  // A pixel's middle is half a pixel from its edges, in every size.
  const [x0, y0] = [0.5 / scale - 0.5 + box.left, 0.5 / scale - 0.5 + box.top];
  const [u0, v0] = [0.5 - source.left, 0.5 - source.top];
  const s = source.scale;
  const w = g * x0 + h * y0 + 1;
  const [cx, cy] = [a * x0 + b * y0 + c, d * x0 + e * y0 + f];
  const all = [
    (s * (a + u0 * g) - 0.5 * g) / scale,
    (s * (b + u0 * h) - 0.5 * h) / scale,
    s * (cx + u0 * w) - 0.5 * w,
    (s * (d + v0 * g) - 0.5 * g) / scale,
    (s * (e + v0 * h) - 0.5 * h) / scale,
    s * (cy + v0 * w) - 0.5 * w,
    g / scale,
    h / scale,
  ].map((entry) => entry / w);
  const { bow } = plan;
  return {
    width: Math.max(1, Math.round(wide * scale)),
    height: Math.max(1, Math.round(high * scale)),
    toStraight: all as unknown as Homography,
    bow: bow && {
      k: bow.k,
      middle: [(bow.middle[0] + u0) * s - 0.5, (bow.middle[1] + v0) * s - 0.5],
      unit: bow.unit * s,
    },
  };
}
