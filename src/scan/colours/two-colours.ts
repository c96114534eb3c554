import { D65, labOf, type Xyz, xyzOfLab } from "./adaptation.ts";
import { colourDifference, type Lab } from "./colour-difference.ts";
import { differenceBeyondShade } from "./ranked.ts";
import { middleColour } from "./wire-strip.ts";

/** One of the colours of a wire. */
export interface ColourPart {
  /** Where it is well lit, without gleams. */
  readonly colour: Lab;
  /** Of the wire's visible face, 0 to 1. */
  readonly share: number;
  /** Whether it is no more than the base with white light over it: a pale stripe, or a gleam. */
  readonly mayBeGleam: boolean;
}

/** A thin stripe covers no less of a wire's face than this ... */
const LEAST_STRIPE = 0.05;
/** ... and differs from it so far by CIEDE2000, whatever the shade. */
const LEAST_DIFFERENCE = 12;
/** Of its pixels, those that hang together in its few largest pieces. */
const LEAST_WHOLE = 0.7;
/** Lightness counts less than hue: a round wire is dark at its sides. */
const LIGHTNESS = 0.5;

/**
 * The two colours of a wire's face, the larger first; one where there is no stripe. `lost` pixels, 1,
 * are left out: there is no colour in a gleam.
 */
export function twoColours(
  face: readonly Lab[],
  lost: Uint8Array,
  length: number,
): readonly ColourPart[] {
  const seen = face.flatMap((colour, at) => (lost[at] ? [] : [{ colour, at }]));
  if (seen.length < 12) return [];
  const groups = parted(seen.map(({ colour }) => colour));
  const parts = [0, 1, 2]
    .map((which) => seen.filter((_, index) => groups[index] === which))
    .filter((pixels) => pixels.length > 0)
    .map((pixels) => ({ pixels, colour: litColour(pixels.map(({ colour }) => colour)) }))
    .toSorted((one, other) => other.pixels.length - one.pixels.length);
  const [broad, ...others] = parts;
  if (!broad) return [];
  const stripes = others
    .filter(
      ({ pixels, colour }) =>
        pixels.length >= LEAST_STRIPE * seen.length &&
        differenceBeyondShade(broad.colour, colour, 1) >= LEAST_DIFFERENCE &&
        isStripe(new Set(pixels.map(({ at }) => at)), length),
    )
    .map(({ pixels, colour }) => ({
      colour,
      share: pixels.length / seen.length,
      mayBeGleam: isPaler(broad.colour, colour),
    }))
    .toSorted((one, other) => Number(one.mayBeGleam) - Number(other.mayBeGleam));
  const thin = stripes[0];
  const base = { colour: broad.colour, share: 1 - (thin?.share ?? 0), mayBeGleam: false };
  return thin ? [base, thin] : [base];
}

/** Three groups by nearness (k-means), each begun with what is farthest from those before. */
function parted(colours: readonly Lab[]): Uint8Array {
  const near = ([l, a, b]: Lab, [l2, a2, b2]: Lab) =>
    (LIGHTNESS * (l - l2)) ** 2 + (a - a2) ** 2 + (b - b2) ** 2;
  const centres: Lab[] = [middleColour(colours)];
  const nearest = (colour: Lab) => Math.min(...centres.map((centre) => near(colour, centre)));
  while (centres.length < 3) {
    const far = colours
      .map((colour) => ({ colour, off: nearest(colour) }))
      .toSorted((one, other) => one.off - other.off);
    // The farthest pixels of all are noise at an edge.
    centres.push(far[Math.floor(far.length * 0.97)]?.colour ?? (centres[0] as Lab));
  }
  const group = new Uint8Array(colours.length);
  for (let turn = 0; turn < 8; turn++) {
    const sums = centres.map(() => [0, 0, 0, 0]) as [number, number, number, number][];
    colours.forEach((colour, index) => {
      let which = 0;
      for (let other = 1; other < centres.length; other++) {
        if (near(colour, centres[other] as Lab) < near(colour, centres[which] as Lab))
          which = other;
      }
      group[index] = which;
      const sum = sums[which] as [number, number, number, number];
      for (let i = 0; i < 3; i++) sum[i as 0] += colour[i as 0];
      sum[3]++;
    });
    sums.forEach(([l, a, b, count], which) => {
      if (count > 0) centres[which] = [l / count, a / count, b / count];
    });
  }
  return group;
}

/** CIEDE2000 within which a colour is taken as a mixture. */
const MIXED = 9;

/** Whether a colour is another with white light over it. */
function isPaler(base: Lab, colour: Lab): boolean {
  if (colour[0] < base[0] + 6) return false;
  const own = xyzOfLab(base);
  for (let share = 0.1; share <= 1.2; share += 0.05) {
    for (const left of [0.25, 0.5, 0.75, 1]) {
      const mixed = own.map((one, i) => left * one + share * (D65[i] as number));
      if (colourDifference(labOf(mixed as unknown as Xyz), colour) < MIXED) return true;
    }
  }
  return false;
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

/** Whether pixels (places in rows of `length`) hang together in pieces that are long, not in specks. */
function isStripe(pixels: ReadonlySet<number>, length: number): boolean {
  const left = new Set(pixels);
  const sizes: number[] = [];
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
    sizes.push(size);
  }
  const largest = sizes.toSorted((one, other) => other - one).slice(0, 3);
  return largest.reduce((sum, size) => sum + size, 0) >= LEAST_WHOLE * pixels.size;
}
