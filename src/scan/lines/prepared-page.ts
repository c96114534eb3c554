import { distancesToPaper } from "../distance.ts";
import { enlarged } from "../enlarge.ts";
import { withoutGrain } from "../grain.ts";
import { inking } from "../ink.ts";
import { flattened } from "../paper.ts";
import { fillPinholes } from "../pinholes.ts";
import type { Bits, Grey } from "../raster.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { takeOutSpecks } from "../specks.ts";
import { thinning } from "../thinning.ts";
import { histogram } from "../threshold.ts";
import { placesOf } from "./skeleton.ts";
import { tonesOf, usualLine } from "./usual-line.ts";

/** A picture made ready for following lines. Its own pixels may be finer than the picture's. */
export interface PreparedPage {
  /** Pixels here to a pixel of the picture: 1, or more where lines are hardly a pixel wide. */
  readonly scale: number;
  readonly flat: Grey;
  /** How dark the middle of the usual line is, 0 to 255. */
  readonly full: number;
  /** How dark bare paper is: its grain, 0 to 255. */
  readonly bare: number;
  readonly ink: Bits;
  readonly thinned: Bits;
  /** Of all pixels of `thinned` that are line, in order: y times width plus x. */
  readonly places: Int32Array;
  /** As `distanceToPaper` counts. */
  readonly far: Uint8Array;
  /** Width of the usual line, in pixels of this page. */
  readonly lineWidth: number;
  /** Pixels by which `ink` sticks out of either side of such a line. */
  readonly spread: number;
}

/** Thinner lines than this have too few pixels to tell a dot from a crossing. */
const FINE_ENOUGH = 2.5;
const MOST_SCALE = 3;
/** Larger pages than this are never enlarged: they have fine lines because they are small print. */
const MOST_PIXELS = 40_000_000;

/** Makes a picture ready; nothing of it is kept but what the result holds. */
export function* preparePage(grey: Grey): Sliced<PreparedPage> {
  const flat = yield* asPart(flattened(grey), 0, 0.15);
  const plain = yield* asPart(withoutGrain(flat), 0.15, 0.2);
  const first = yield* asPart(inkAndLines(flat, plain), 0.2, 0.7);
  const scale = Math.min(MOST_SCALE, Math.ceil(FINE_ENOUGH / first.lineWidth));
  if (scale <= 1 || grey.data.length * scale * scale > MOST_PIXELS)
    return yield* asPart(preparedFrom(first, 1), 0.7, 1);
  const finer = yield* asPart(enlarged(flat, scale), 0.7, 0.75);
  const finerPlain = plain === flat ? finer : yield* asPart(enlarged(plain, scale), 0.7, 0.75);
  const lines = yield* asPart(inkAndLines(finer, finerPlain), 0.75, 0.95);
  return yield* asPart(preparedFrom(lines, scale), 0.95, 1);
}

type Lines = Omit<PreparedPage, "scale" | "far" | "places"> & { readonly all: Int32Array };

/** Ink and thinned lines with all dust still in them, the places of all thinned pixels in order. */
function* inkAndLines(flat: Grey, plain: Grey): Sliced<Lines> {
  const counts = yield* asPart(histogram(flat), 0, 0.1);
  const ink = yield* asPart(inking(plain, plain === flat ? counts : null), 0.1, 0.25);
  yield* asPart(fillPinholes(ink), 0.25, 0.3);
  const thinned = yield* asPart(thinning(ink), 0.3, 0.8);
  const all = yield* asPart(placesOf(thinned), 0.8, 0.85);
  const tones = yield* asPart(tonesOf(flat, counts, ink, all), 0.85, 0.95);
  const usual = yield* asPart(usualLine({ flat, ...tones }, ink, all), 0.95, 1);
  return { flat, ink, thinned, all, ...tones, ...usual };
}

function* preparedFrom({ all, ...lines }: Lines, scale: number): Sliced<PreparedPage> {
  const { ink, thinned, lineWidth } = lines;
  yield* asPart(takeOutSpecks(ink, Math.max(2, 1.3 * lineWidth)), 0, 0.4);
  for (let n = 0; n < all.length; n++) {
    const at = all[n] as number;
    if (!ink.data[at]) thinned.data[at] = 0;
  }
  const places = all.filter((at) => thinned.data[at] === 1);
  const far = yield* asPart(distancesToPaper(ink), 0.4, 1);
  return { ...lines, places, far, scale };
}
