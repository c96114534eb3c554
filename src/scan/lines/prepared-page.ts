import { componentsOf } from "../components.ts";
import { distanceToPaper } from "../distance.ts";
import { enlarge } from "../enlarge.ts";
import { inkOf } from "../ink.ts";
import { flatten } from "../paper.ts";
import { type Bits, bitsOf, type Grey } from "../raster.ts";
import type { Sliced } from "../sliced.ts";
import { thin } from "../thinning.ts";
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
  const first = prepareAt(flatten(grey), 1);
  yield 0.5;
  const scale = Math.min(MOST_SCALE, Math.ceil(FINE_ENOUGH / first.lineWidth));
  if (scale <= 1 || grey.data.length * scale * scale > MOST_PIXELS) return first;
  return prepareAt(enlarge(first.flat, scale), scale);
}

function prepareAt(flat: Grey, scale: number): PreparedPage {
  const inked = inkOf(flat);
  const thinned = thin(inked);
  const { full, bare } = tonesOf(flat, inked, thinned);
  const { lineWidth, spread } = usualLine({ flat, full, bare }, inked, thinned);
  const ink = withoutSpecks(inked, lineWidth);
  const kept = bitsOf(ink.width, ink.height);
  for (let at = 0; at < kept.data.length; at++) {
    kept.data[at] = ink.data[at] && thinned.data[at] ? 1 : 0;
  }
  const far = distanceToPaper(inked);
  return { scale, flat, full, bare, ink, thinned: kept, far, lineWidth, spread };
}

/** Ink in pieces smaller than a line is wide both ways, dust, left out. */
function withoutSpecks(ink: Bits, lineWidth: number): Bits {
  const { labels, list } = componentsOf(ink);
  const least = Math.max(2, 1.3 * lineWidth);
  const isKept = Uint8Array.from([
    0,
    ...list.map(({ left, right, top, bottom }) =>
      right - left + 1 > least || bottom - top + 1 > least ? 1 : 0,
    ),
  ]);
  const bits = bitsOf(ink.width, ink.height);
  for (let at = 0; at < labels.length; at++) bits.data[at] = isKept[labels[at] as number] as number;
  return bits;
}
