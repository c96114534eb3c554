import type { Point } from "../../base/index.ts";
import type { Quad } from "../homography.ts";
import type { Grey } from "../raster.ts";
import { asPart, finished, type Sliced } from "../sliced.ts";
import { type Bow, bowed, straightened } from "./bow.ts";
import { fitBow } from "./bow-fit.ts";
import { type PictureSide, sidesCutOff } from "./cut-off.ts";
import { edgeLinesOf } from "./edge-lines.ts";
import { areaOf, edgeQuadOf } from "./edge-quad.ts";
import { shrunk } from "./shrunk.ts";
import { sidePointsOf } from "./side-points.ts";
import { isConvex } from "./squaring.ts";
import { crossing, lineThrough } from "./straight-line.ts";

export interface ProposedCorners {
  /** In pixels of the picture, clockwise from the top left. */
  readonly corners: Quad;
  /** The edge of the paper, or a frame drawn on it. */
  readonly of: "page" | "frame";
  /** 0 to 1: how fully the four sides are seen and how surely they end at the corners. */
  readonly confidence: number;
  /** The bow of the lens, where the sides show one. */
  readonly bow: Bow | null;
  /** Sides of the picture beyond which the page goes on: it can't be squared up by its edge there. */
  readonly cutOff: readonly PictureSide[];
}

/** Edges are looked for in a picture about this large: what is straight for long stands out there. */
const COARSE = 480;
/** A page may be partly hidden, by a hand or a clip; a frame is whole, or it is lines of the drawing. */
const LEAST_CONFIDENCE = { page: 0.6, frame: 0.88 } as const;
/** A drawn box smaller than this share of the picture is no frame, but something on the page. */
const LEAST_FRAME = 0.55;
/** Of each side this share must be found at full resolution. */
const LEAST_FOUND = 0.4;

/** As `proposedCorners`, in one go. */
export const proposeCorners = (grey: Grey): ProposedCorners | null =>
  finished(proposedCorners(grey));

/**
 * The page's corners, against a darker ground, or those of the frame drawn around the drawing; null
 * where neither is plain to see. A proposal: the user drags what is wrong.
 */
export function* proposedCorners(grey: Grey): Sliced<ProposedCorners | null> {
  const times = Math.max(1, Math.ceil(Math.max(grey.width, grey.height) / COARSE));
  const small = yield* asPart(shrunk(grey, times), 0, 0.4);
  const lines = yield* asPart(edgeLinesOf(small), 0.4, 0.7);
  const quad = edgeQuadOf(lines, small.width, small.height);
  yield 0.8;
  if (!quad) return null;
  const finer = ([x, y]: Point): Point => [(x + 0.5) * times - 0.5, (y + 0.5) * times - 0.5];
  const seen = settledCorners(grey, quad.corners.map(finer) as unknown as Quad, 4 * times + 4);
  if (!seen) return null;
  const confidence = quad.quality * Math.min(1, 1.1 * seen.found);
  const area = areaOf(seen.corners) / (grey.width * grey.height);
  if (confidence < LEAST_CONFIDENCE[seen.of] || (seen.of === "frame" && area < LEAST_FRAME))
    return null;
  const { corners, of, bow } = seen;
  return { corners, of, confidence, bow, cutOff: of === "page" ? sidesCutOff(grey, corners) : [] };
}

/** The lens's bow as the sides near given corners show it, a hand's included; null where there is none. */
export function bowNear(grey: Grey, corners: Quad): Bow | null {
  const reach = Math.max(6, Math.round(Math.max(grey.width, grey.height) / 50));
  return settledCorners(grey, corners, reach)?.bow ?? null;
}

function settledCorners(grey: Grey, corners: Quad, reach: number) {
  const sides = sidePointsOf(grey, corners, reach);
  const found = Math.min(...sides.map((side) => side.found));
  if (found < LEAST_FOUND) return null;
  const points = sides.map((side) => side.points);
  const bow = fitBow(points, grey.width, grey.height);
  const lines = points.map((side) =>
    lineThrough(bow ? side.map((point) => straightened(bow, point)) : side),
  );
  const settled: Point[] = [];
  for (let corner = 0; corner < 4; corner++) {
    const [before, after] = [lines[(corner + 3) % 4], lines[corner]];
    const at = before && after ? crossing(before, after) : null;
    if (!at) return null;
    settled.push(bow ? bowed(bow, at) : at);
  }
  const quad = settled as unknown as Quad;
  if (!isConvex(quad)) return null;
  const of: ProposedCorners["of"] =
    sides.filter((side) => side.isDrawn).length >= 3 ? "frame" : "page";
  return { corners: quad, of, bow, found };
}
