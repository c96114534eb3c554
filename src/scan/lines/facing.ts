import { distance, type Point } from "../../base/index.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";
import type { Bits } from "../raster.ts";
import type { Sliced } from "../sliced.ts";
import { lengthOf } from "./branch.ts";
import { middleDarkness } from "./darkness.ts";
import { LETTER_STROKE } from "./letter-stroke.ts";
import { NearEnds } from "./near-ends.ts";
import type { OpenEnd } from "./open-ends.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";
import type { Ways } from "./ways.ts";

/** The line that an open end runs towards over a hole: a T or a corner whose stem broke off. */
export interface Facing {
  readonly end: OpenEnd;
  readonly stretch: number;
  readonly at: Point;
  readonly isDot: boolean;
  readonly isSure: boolean;
}

/** In line widths: how far from an end its line may be ... */
const MOST = 4;
/** ... and how far for sure, where it is a plain line and where it is a dot. */
const SURE_LINE = 2.2;
const SURE_DOT = 4;
/** ... and never for sure where a plain fork is so near. */
const BESIDE_FORK = 2.5;
/** ... nor where another line ends so near: both may be one. */
const BESIDE_END = 4;
/** Solid ink of so many line widths' radius is a dot. */
const DOT = 1.15;
const LONG_ENOUGH = 2.5;
/** The ends of a straight line are apart by that share of its length at least, grain and all. */
const STRAIGHT = 0.96;
/** A stroke so much paler than what it goes on in is a letter's. */
const PALE = 0.7;
/** In line widths: how deep the middle of a line or dot lies behind its edge at most. */
const DEPTH = 3;
/** ... and that of a line behind a bump of its edge, whose tip was met first. */
const BUMP = 2;
/** In line widths: so little ink is grain. */
const SPECK = 0.5;
/** Pixels of lines looked at in a slice. */
const SLICE = 100_000;

/** What each open end runs into, where that is another line, and not one of its own. */
export function* linesFaced(
  page: PreparedPage,
  skeleton: Skeleton,
  thinned: Bits,
  ends: readonly OpenEnd[],
  ways: Ways,
): Sliced<Facing[]> {
  const hits: (Hit & { readonly end: OpenEnd })[] = [];
  for (const end of ends) {
    if (!end.isHeld || end.length < LONG_ENOUGH * page.lineWidth) continue;
    const hit = hitAhead(page, thinned, end);
    if (hit) hits.push({ end, ...hit });
  }
  if (hits.length === 0) return [];
  yield 0.3;
  const wanted = new Map<number, number>(hits.flatMap(({ met }) => met.map(({ at }) => [at, -1])));
  for (let stretch = 0, looked = 0; stretch < skeleton.stretches.length; stretch++) {
    const { pixels } = skeleton.stretches[stretch] as Stretch;
    for (let n = 0; n < pixels.length; n++) {
      const at = pixels[n] as number;
      if (wanted.has(at)) wanted.set(at, stretch);
    }
    looked += pixels.length;
    if (looked < SLICE) continue;
    looked = 0;
    yield 0.3 + (0.6 * stretch) / skeleton.stretches.length;
  }
  for (const { pixels, stretches } of skeleton.nodes) {
    for (const at of pixels) if (wanted.has(at)) wanted.set(at, stretches[0] ?? -1);
  }
  const { width } = skeleton;
  const long = ends.filter(({ length }) => length >= LONG_ENOUGH * page.lineWidth);
  const besideEnd = BESIDE_END * page.lineWidth;
  const near = new NearEnds(long, besideEnd);
  const isBesideEnd = (end: OpenEnd) =>
    near
      .around(end.at, besideEnd)
      .some((other) => other !== end && distance(other.at, end.at) <= besideEnd);
  const isBesideFork = forksNear(skeleton, BESIDE_FORK * page.lineWidth);
  return hits.flatMap(({ end, met, wide }): Facing[] => {
    // A bump of the line, as a stem leaves that broke off, is thinned to a tip that is no line.
    const first = met.find(({ at }) => (wanted.get(at) as number) >= 0);
    if (!first) return [];
    const { at, isDot } = first;
    const stretch = wanted.get(at) as number;
    if (stretch === end.stretch) return [];
    const sure = (isDot ? SURE_DOT : SURE_LINE) * page.lineWidth;
    const place: Point = [at % width, Math.floor(at / width)];
    // Right beside a fork it may be the lost arm of a crossing, or of a jump.
    const isFree = (isDot || !isBesideFork(place)) && !isBesideEnd(end);
    // A letter's stroke on a line that stops before another: asked only where it all but touches it.
    const isLine = isNoStroke(page, skeleton, end, ways);
    if (!isLine && wide > sure) return [];
    return [{ end, stretch, at: place, isDot, isSure: wide <= sure && isFree && isLine }];
  });
}

/** Whether what ends there is longer than a letter's stroke, or comes from where another line ends. */
function isNoStroke(
  page: PreparedPage,
  { nodes, stretches }: Skeleton,
  { at, stretch, node }: OpenEnd,
  ways: Ways,
): boolean {
  const { lineWidth } = page;
  const { from, to, length } = stretches[stretch] as Stretch;
  const far = 2 * LETTER_STROKE * lineWidth;
  const other = nodes[from === node ? to : from] as SkeletonNode;
  if (other.stretches.length === 1 || length >= LETTER_STROKE * lineWidth) return true;
  // Grain forks a line, which goes straight on behind it; a stroke's way goes on in the line it stands on.
  const way = ways.along({ stretch, isFrom: from === node }, far, at, LETTER_STROKE * lineWidth);
  const last = way.at(-1);
  if (!last || distance(last, at) < LETTER_STROKE * lineWidth) return false;
  const [own, beyond] = [
    middleDarkness(page, at, way, 0, length),
    middleDarkness(page, at, way, length + lineWidth, far),
  ];
  if (own < PALE * beyond) return false;
  return distance(last, at) >= STRAIGHT * lengthOf(way);
}

/** Says of a place whether a fork is within reach. Forks stand in rows: a page of hatching has very many. */
function forksNear({ nodes }: Skeleton, reach: number): (place: Point) => boolean {
  const forks = nodes.filter(({ stretches }) => stretches.length > 2).sort((a, b) => a.y - b.y);
  return ([x, y]) => {
    let [first, beyond] = [0, forks.length];
    while (first < beyond) {
      const middle = (first + beyond) >> 1;
      if ((forks[middle] as SkeletonNode).y < y - reach) first = middle + 1;
      else beyond = middle;
    }
    for (let n = first; n < forks.length; n++) {
      const fork = forks[n] as SkeletonNode;
      if (fork.y > y + reach) return false;
      if (Math.hypot(fork.x - x, fork.y - y) <= reach) return true;
    }
    return false;
  };
}

/** What lies straight ahead of an end. */
interface Hit {
  /** Pixels from the end to the ink. */
  readonly wide: number;
  /** Pixels of thinned line in that ink or beside it, the nearest first. */
  readonly met: readonly { readonly at: number; readonly isDot: boolean }[];
}

/** The thinned lines straight ahead, or in ink straight ahead; null where there are none. */
function hitAhead(
  { ink, far, lineWidth, spread }: PreparedPage,
  thinned: Bits,
  { at: [x, y], onward }: OpenEnd,
): Hit | null {
  const { width } = thinned;
  const placeAt = (far: number) =>
    Math.round(y + onward[1] * far) * width + Math.round(x + onward[0] * far);
  // What is left of its own ink lies at the end itself.
  let start = 0;
  while (start < lineWidth && ink.data[placeAt(start)]) start += 0.5;
  for (let wide = start; ; ) {
    while (wide <= MOST * lineWidth && !ink.data[placeAt(wide)]) wide += 0.5;
    if (wide > MOST * lineWidth) return null;
    const met: { at: number; isDot: boolean }[] = [];
    let [most, deep] = [0, 0];
    for (; deep <= (met.length > 0 ? BUMP : DEPTH) * lineWidth; deep += 0.5) {
      const place = placeAt(wide + deep);
      if (!ink.data[place]) break;
      most = Math.max(most, far[place] as number);
      for (const beside of [place, place - 1, place + 1, place - width, place + width]) {
        if (!thinned.data[beside]) continue;
        const solid = Math.max(most, far[beside] as number) / STEPS_PER_PIXEL - 0.5 - spread;
        met.push({ at: beside, isDot: solid >= DOT * lineWidth });
      }
    }
    if (met.length > 0) return { wide, met };
    // Grain before a line, or at its rim, hides nothing behind it.
    if (deep >= SPECK * lineWidth) return null;
    wide += deep;
  }
}
