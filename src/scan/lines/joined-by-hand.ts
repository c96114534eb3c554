import type { Point } from "../../base/index.ts";
import { distance, nearestOnSegment } from "../../base/index.ts";
import { NearStretches } from "../near-stretches.ts";
import type { Bits } from "../raster.ts";
import type { Links } from "./links.ts";
import { NearEnds } from "./near-ends.ts";
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
 * Joins what the user said is one where the program saw nothing to join: the two ends that each place
 * lies between, or the nearest end and the line beside it.
 */
export function joinWhereSaid(
  { lineWidth }: PreparedPage,
  skeleton: Skeleton,
  links: Links,
  ends: readonly OpenEnd[],
  places: readonly Point[],
): void {
  if (places.length === 0) return;
  const nearStretches = new NearStretches(skeleton);
  const order = new Map(ends.map((end, n) => [end, n]));
  const orderOf = (end: OpenEnd) => order.get(end) as number;
  const { width, height } = skeleton;
  const reach = END * lineWidth;
  const nearEnds = new NearEnds(ends, reach);
  for (const at of places) {
    const [x, y] = at;
    if (x < -reach || y < -reach || x > width + reach || y > height + reach) continue;
    const near = nearEnds
      .around(at, reach)
      .map((end) => ({ end, far: distance(end.at, at) }))
      .filter(({ far }) => far <= reach)
      .sort((a, b) => a.far - b.far || orderOf(a.end) - orderOf(b.end))
      .map(({ end }) => end);
    joinAt(lineWidth, skeleton, links, near, nearStretches, at);
  }
}

/** `near`: ends thereabouts, the nearest first. */
function joinAt(
  lineWidth: number,
  skeleton: Skeleton,
  links: Links,
  near: readonly OpenEnd[],
  nearStretches: NearStretches,
  at: Point,
): void {
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
  for (const stretch of nearStretches.around(at, MIDDLE * lineWidth)) {
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
