import type { Sliced } from "../sliced.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton } from "./skeleton.ts";
import { usualWidth } from "./usual-line.ts";
import type { Zone } from "./zones.ts";

/** A page measured in its solid ink rather than in that of its lines. */
export interface SolidInk {
  /** Its `full` is how dark solid ink is, 0 to 255. */
  readonly page: PreparedPage;
  /** Width of the usual line in such ink, in pixels. */
  readonly lineWidth: number;
  /** How dark the middle of the usual line is, as a share of solid ink. */
  readonly usual: number;
}

/** One in so many places of lines is measured, and of those stretches that are as many line widths long. */
const STRIDE = 7;
const LINE = 10;
/** Of the places where lines meet this share is no darker than solid ink: beyond lies grain. */
const DARKEST = 0.9;
/** Of the crossings of a page, that are no dots, this share shows ink no darker than it is. */
const CROSSED = 0.25;
/** Times as dark as a line a crossing is at most: where most are darker, grain hides the page's lines. */
const BOTH = 1.75;

/**
 * Blur takes the middle of a thin line away: it is half as dark as ink, and by it the line seems twice
 * as wide as it was drawn. Where lines meet there is more ink, and dots show how dark it is. Where a page
 * has none, its crossings tell: two blurred lines as dark as p of solid ink f make 2 p - p p / f there.
 */
export function* solidInk(
  page: PreparedPage,
  skeleton: Skeleton,
  zones: readonly Zone[],
): Sliced<SolidInk> {
  const { flat, bare } = page;
  // Of lines alone: on a bad page most of what was thinned is grain.
  const sample: number[] = [];
  for (const { length, pixels } of skeleton.stretches) {
    if (length < LINE * page.lineWidth) continue;
    for (let n = STRIDE; n < pixels.length; n += STRIDE) sample.push(pixels[n] as number);
  }
  const darks = sample.map((at) => 255 - (flat.data[at] as number) - bare);
  const line = darks.length === 0 ? page.full - bare : Math.max(1, shareOf(darks, 0.5));
  const met: number[] = [];
  const crossed: number[] = [];
  for (const zone of zones) {
    if (zone.branches.length < 3) continue;
    const dark = darkestAt(page, skeleton, zone) - bare;
    met.push(dark);
    if (zone.branches.length === 4) crossed.push(dark);
  }
  const asCrossings = crossed
    .filter((dark) => dark <= BOTH * line)
    .map((dark) => line ** 2 / (2 * line - dark));
  const solid = Math.max(
    line,
    shareOf(met, DARKEST),
    shareOf(crossed, DARKEST),
    2 * asCrossings.length < crossed.length ? 0 : shareOf(asCrossings, CROSSED),
  );
  const full = Math.min(255, bare + solid);
  const lineWidth = yield* usualWidth({ flat, full, bare }, Int32Array.from(sample));
  return { page: { ...page, full }, lineWidth, usual: line / (full - bare) };
}

/** The value below which so much of all lies; 0 of none. */
const shareOf = (all: readonly number[], share: number): number =>
  Float64Array.from(all).sort()[Math.floor(all.length * share)] ?? 0;

/** The darkest of the means of three by three pixels of the picture round a place's forks, 0 to 255. */
function darkestAt({ flat, scale }: PreparedPage, skeleton: Skeleton, { nodes }: Zone): number {
  const { width, height, data } = flat;
  const count = (2 * scale + 1) ** 2;
  let lightest = count * 255;
  for (const at of nodes.flatMap((node) => skeleton.nodes[node]?.pixels ?? [])) {
    const [x, y] = [at % width, Math.floor(at / width)];
    if (x < scale || y < scale || x + scale >= width || y + scale >= height) continue;
    let light = 0;
    for (let row = y - scale; row <= y + scale; row++) {
      for (let n = x - scale; n <= x + scale; n++) light += data[row * width + n] as number;
    }
    lightest = Math.min(lightest, light);
  }
  return 255 - lightest / count;
}
