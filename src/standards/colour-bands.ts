import { builtInTracer, IEC_60757 } from "./iec-60757.ts";
import type { WireColour } from "./wire-colour.ts";

/** What a length of wire is drawn in, `#rrggbb`. */
export interface ColourBands {
  readonly base: string;
  /** The thin stripe; null where there is none. */
  readonly stripe: string | null;
  /** A thin line on both sides of the stripe where it is about as bright as the base; null: none needed. */
  readonly edge: string | null;
}

/** Contrast below which a stripe is lost on its base to an eye that tells no hues apart (our choice). */
const LEAST_CONTRAST = 1.6;
const DARK = "#1c1c1c";
const LIGHT = "#ffffff";

/** A wire's colours such that the stripe shows by its shape alone. */
export function colourBands(colour: WireColour): ColourBands {
  const base = IEC_60757[colour.base].rgb;
  const tracer = colour.tracer ?? builtInTracer(colour.base);
  if (!tracer) return { base, stripe: null, edge: null };
  const stripe = IEC_60757[tracer].rgb;
  if (contrast(base, stripe) >= LEAST_CONTRAST) return { base, stripe, edge: null };
  return { base, stripe, edge: contrast(base, DARK) > contrast(base, LIGHT) ? DARK : LIGHT };
}

/** WCAG 2 contrast ratio, 1 to 21. */
function contrast(a: string, b: string): number {
  const [dim, bright] = [luminance(a), luminance(b)].sort((one, other) => one - other);
  return ((bright as number) + 0.05) / ((dim as number) + 0.05);
}

/** WCAG 2 relative luminance, 0 to 1. */
function luminance(rgb: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(rgb.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (r as number) + 0.7152 * (g as number) + 0.0722 * (b as number);
}
