import { distancesToPaper } from "../distance.ts";
import { enlarged } from "../enlarge.ts";
import { withoutGrain } from "../grain.ts";
import { type Ink, inkOn } from "../ink.ts";
import { inkIn } from "../packed-bits.ts";
import { flattenedAndCounted } from "../paper.ts";
import { fillPinholes } from "../pinholes.ts";
import type { Bits, Grey } from "../raster.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { takeOutSpecks } from "../specks.ts";
import { thinnedLines } from "../thinning.ts";
import { histogram } from "../threshold.ts";
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
/** A page with more ink than this share of it is a black one: thinning has no paper to begin from. */
const MOST_INK = 0.9;

/** Makes a picture ready; nothing of it is kept but what the result holds. */
export function* preparePage(grey: Grey): Sliced<PreparedPage> {
  const { flat, counts } = yield* asPart(flattenedAndCounted(grey), 0, 0.25);
  const plain = yield* asPart(withoutGrain(flat), 0.25, 0.3);
  const first = yield* asPart(inkAndLines(flat, plain, counts), 0.3, 0.8);
  const scale = Math.min(MOST_SCALE, Math.ceil(FINE_ENOUGH / first.lineWidth));
  if (scale <= 1 || grey.data.length * scale * scale > MOST_PIXELS)
    return yield* asPart(preparedFrom(first, 1), 0.8, 1);
  const finer = yield* asPart(enlarged(flat, scale), 0.8, 0.85);
  const finerPlain = plain === flat ? finer : yield* asPart(enlarged(plain, scale), 0.8, 0.85);
  const finerCounts = yield* histogram(finer);
  const lines = yield* asPart(inkAndLines(finer, finerPlain, finerCounts), 0.85, 0.95);
  return yield* asPart(preparedFrom(lines, scale), 0.95, 1);
}

type Lines = Omit<PreparedPage, "scale" | "far" | "ink"> & { readonly ink: Ink };

/** Ink and thinned lines with all dust still in them; `counts` are how many pixels have each brightness. */
function* inkAndLines(flat: Grey, plain: Grey, counts: Uint32Array): Sliced<Lines> {
  const ink = yield* asPart(inkOn(plain, plain === flat ? counts : null), 0, 0.3);
  yield* asPart(fillPinholes(ink), 0.3, 0.4);
  if (isBlack(ink)) empty(ink);
  const { lines: thinned, places } = yield* asPart(thinnedLines(ink.bits, ink.packed), 0.4, 0.8);
  const tones = yield* asPart(tonesOf(flat, counts, ink.packed, places), 0.8, 0.9);
  const usual = yield* asPart(usualLine({ flat, ...tones }, ink.packed, places), 0.9, 1);
  return { flat, ink, thinned, places, ...tones, ...usual };
}

function isBlack({ packed }: Ink): boolean {
  return inkIn(packed) > MOST_INK * packed.width * packed.height;
}

function empty({ bits, packed }: Ink): void {
  bits.data.fill(0);
  packed.words.fill(0);
}

function* preparedFrom({ ink, ...lines }: Lines, scale: number): Sliced<PreparedPage> {
  const { thinned, lineWidth } = lines;
  yield* asPart(takeOutSpecks(ink, Math.max(2, 1.3 * lineWidth)), 0, 0.4);
  const places = withoutDust(lines.places, thinned, ink.bits);
  const far = yield* asPart(distancesToPaper(ink.bits, ink.packed), 0.4, 1);
  return { ...lines, ink: ink.bits, places, far, scale };
}

/** Places of lines that are ink still; the others are taken out of the lines. */
function withoutDust(places: Int32Array, { data: lines }: Bits, { data: ink }: Bits): Int32Array {
  let count = 0;
  for (let n = 0; n < places.length; n++) {
    const at = places[n] as number;
    if (ink[at]) places[count++] = at;
    else lines[at] = 0;
  }
  return places.slice(0, count);
}
