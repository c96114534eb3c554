import type { Colour } from "../../../job/index.ts";
import { builtInTracer, IEC_60757 } from "../../../standards/index.ts";
import styles from "./colour-swatch.module.css";

/** A short piece of wire in its two colours; the code always stands beside it, so it says nothing itself. */
export function ColourSwatch({ colour }: { colour: Colour | null }) {
  if (!colour) return <span className={styles.swatch} data-none="true" aria-hidden="true" />;
  const stripe = colour.tracer ?? builtInTracer(colour.base);
  const base = IEC_60757[colour.base].rgb;
  const background = stripe
    ? `linear-gradient(${base} 33%, ${IEC_60757[stripe].rgb} 33% 67%, ${base} 67%)`
    : base;
  return <span className={styles.swatch} style={{ background }} aria-hidden="true" />;
}
