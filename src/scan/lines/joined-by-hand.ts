import type { Point } from "../../base/index.ts";
import { distance, nearestOnSegment } from "../../base/index.ts";
import type { Bits } from "../raster.ts";
import type { Links } from "./links.ts";
import type { OpenEnd } from "./open-ends.ts";
import { pixelRows } from "./pixel-rows.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton } from "./skeleton.ts";

/** In line widths: how near a line is what was meant, ... */
const NEAR = 2;
/** ... how far a line's end may be from where the user joined it, ... */
const END = 20;
/** ... and how far another line's middle. */
const MIDDLE = 4;

/** Whether a line passes where the user cut one. */
export function lineNear({ lineWidth }: PreparedPage, lines: Bits, [x, y]: Point): boolean {
  const reach = NEAR * lineWidth;
  const around = { left: x - reach, right: x + reach, top: y - reach, bottom: y + reach };
  const { left, top, right, bottom } = pixelRows(around, 0, lines);
  for (let row = top; row < bottom; row++) {
    if (lines.data.subarray(row * lines.width + left, row * lines.width + right).some(Boolean))
      return true;
  }
  return false;
}

/**
 * Joins what the user said is one where the program saw nothing to join: the two ends that the place
 * lies between, or the nearest end and the line beside it.
 */
export function joinWhereSaid(
  { lineWidth }: PreparedPage,
  skeleton: Skeleton,
  links: Links,
  ends: readonly OpenEnd[],
  at: Point,
): void {
  const isNear = (end: OpenEnd) => distance(end.at, at) <= END * lineWidth;
  const near = ends.filter(isNear).sort((a, b) => distance(a.at, at) - distance(b.at, at));
  const [first] = near;
  if (!first) return;
  const facing = near.find(
    (end) =>
      !links.isOne(first.stretch, end.stretch) &&
      distance(at, nearestOnSegment(at, first.at, end.at)) <= NEAR * lineWidth,
  );
  if (facing) {
    links.pass(links.branchOf(first), links.branchOf(facing), at, 0, false);
    return;
  }
  let best: { stretch: number; place: Point; far: number } | null = null;
  for (let stretch = 0; stretch < skeleton.stretches.length; stretch++) {
    if (links.isOne(first.stretch, stretch)) continue;
    for (const pixel of skeleton.stretches[stretch]?.pixels ?? []) {
      const place: Point = [pixel % skeleton.width, Math.floor(pixel / skeleton.width)];
      const far = distance(place, at);
      if (far <= MIDDLE * lineWidth && (best === null || far < best.far))
        best = { stretch, place, far };
    }
  }
  if (best) links.tap(links.branchOf(first), best.stretch, best.place);
}
