import type { Lab } from "./colour-difference.ts";
import { colourGroups } from "./colour-groups.ts";
import { isPaler } from "./paler.ts";
import { differenceBeyondShade } from "./ranked.ts";
import type { WireStrip } from "./wire-strip.ts";
import { middleColour } from "./wire-surroundings.ts";

/** One of the colours of a wire. */
export interface ColourPart {
  /** Where it is well lit, without gleams. */
  readonly colour: Lab;
  /** Of the wire's visible face, 0 to 1. */
  readonly share: number;
}

/** What the face of a wire shows. */
export interface WireFace {
  readonly base: ColourPart;
  /** A stripe; null: none seen. */
  readonly stripe: ColourPart | null;
  /** A line that may be a stripe as well as a gleam or the shaded side. */
  readonly maybe: ColourPart | null;
  /** Whether something else differs from the base by less than a stripe does, but plainly. */
  readonly isUneven: boolean;
}

/** A thin stripe covers no less of a wire's face than this ... */
const LEAST_STRIPE = 0.03;
/** ... and differs from it so far by CIEDE2000 beyond shade; from `UNEVEN` on it may be one. */
const LEAST_DIFFERENCE = 11;
const UNEVEN = 6.5;
/** Stops of light and shade on one round wire; no two groups within them that look alike are two colours. */
const SHADE = 1.2;
const SAME = 7;
/** Of its pixels, those that hang together in long pieces ... */
const LEAST_WHOLE = 0.7;
/** ... of no less than so many samples. */
const LEAST_PIECE = 8;
/** The broadest gleam that a round wire usually has, of its face. */
const GLEAM = 0.2;
/** Stops by which the shaded side of a wire may be darker, and how alike it looks then. */
const DEEP_SHADE = 3.5;
const SHADED = 10;
/** Rows at each edge that mix with what lies beside, of the breadth. */
const RIM = 0.1;

/** What a strip of a wire shows; null where it is too bright to tell anything. */
export function wireFace({ lab, length, breadth }: WireStrip): WireFace | null {
  const rim = Math.round(breadth * RIM);
  const face = lab.slice(rim * length, (breadth - rim) * length);
  const seen = face.flatMap((colour, at) => (colour ? [{ colour, at }] : []));
  if (seen.length < face.length / 4) return null;
  const groups = colourGroups(seen.map(({ colour }) => colour));
  const parts = [...new Set(groups)].map((group) => {
    const pixels = seen.filter((_, index) => groups[index] === group);
    return { pixels, colour: litColour(pixels.map(({ colour }) => colour)) };
  });
  const [broad, ...others] = joined(parts).toSorted(
    (one, other) => other.pixels.length - one.pixels.length,
  );
  if (!broad) return null;
  const inner = (breadth - 2 * rim) / breadth;
  const part = ({ pixels, colour }: Pixels): ColourPart => ({
    colour,
    // The rim left out is the base's.
    share: (pixels.length / seen.length) * inner,
  });
  const lines = others
    .filter(
      ({ pixels }) =>
        pixels.length >= LEAST_STRIPE * seen.length &&
        isStripe(new Set(pixels.map(({ at }) => at)), length),
    )
    .map((one) => ({ ...one, off: differenceBeyondShade(broad.colour, one.colour, SHADE) }));
  const plain = lines.filter(({ off }) => off >= LEAST_DIFFERENCE);
  const isOnlyLight = (one: Pixels) =>
    (isPaler(broad.colour, one.colour) && one.pixels.length < GLEAM * seen.length) ||
    isShadedSide(broad.colour, one, face.length / length, length);
  const stripe = plain.find((one) => !isOnlyLight(one));
  const maybe = plain.find(isOnlyLight);
  const told = stripe ? part(stripe) : null;
  return {
    base: { colour: broad.colour, share: 1 - (told?.share ?? 0) },
    stripe: told,
    maybe: maybe ? part(maybe) : null,
    isUneven: lines.some((one) => one.off >= UNEVEN && one !== stripe && one !== maybe),
  };
}

interface Pixels {
  readonly pixels: readonly { readonly colour: Lab; readonly at: number }[];
  readonly colour: Lab;
}

/** Groups that differ by no more than light and shade made one, the largest first. */
function joined(parts: readonly Pixels[]): readonly Pixels[] {
  const bySize = parts.toSorted((one, other) => other.pixels.length - one.pixels.length);
  for (const [index, one] of bySize.entries()) {
    const other = bySize.findIndex(
      (next, at) => at > index && differenceBeyondShade(next.colour, one.colour, SHADE) < SAME,
    );
    if (other < 0) continue;
    const pixels = [...one.pixels, ...(bySize[other]?.pixels ?? [])];
    const both = { pixels, colour: litColour(pixels.map(({ colour }) => colour)) };
    return joined([both, ...bySize.filter((_, at) => at !== index && at !== other)]);
  }
  return bySize;
}

/** Whether a part is darker along one edge of the wire and else of the same colour. */
function isShadedSide(
  base: Lab,
  { pixels, colour }: Pixels,
  rows: number,
  length: number,
): boolean {
  if (colour[0] > base[0] - 6) return false;
  if (differenceBeyondShade(base, colour, DEEP_SHADE) >= SHADED) return false;
  const outer = (low: number, high: number) =>
    pixels.filter(({ at }) => at >= low * rows * length && at < high * rows * length).length;
  return Math.max(outer(0, 1 / 3), outer(2 / 3, 1)) > 0.5 * pixels.length;
}

/** The colour of what lies in the light: neither the shaded side nor the last gleam. */
function litColour(colours: readonly Lab[]): Lab {
  const byLight = colours.toSorted((one, other) => one[0] - other[0]);
  const lit = byLight.slice(
    Math.floor(byLight.length * 0.4),
    Math.max(1, Math.ceil(byLight.length * 0.92)),
  );
  return middleColour(lit);
}

/** Whether pixels (places in rows of `length`) hang together in long pieces, not in specks. */
function isStripe(pixels: ReadonlySet<number>, length: number): boolean {
  const left = new Set(pixels);
  let whole = 0;
  for (const start of pixels) {
    if (!left.delete(start)) continue;
    let size = 0;
    const edge = [start];
    for (let at = edge.pop(); at !== undefined; at = edge.pop()) {
      size++;
      const column = at % length;
      for (const row of [-length, 0, length])
        for (const step of [-1, 0, 1]) {
          if (column + step < 0 || column + step >= length) continue;
          const next = at + row + step;
          if (left.delete(next)) edge.push(next);
        }
    }
    if (size >= LEAST_PIECE) whole += size;
  }
  return whole >= LEAST_WHOLE * pixels.size;
}
