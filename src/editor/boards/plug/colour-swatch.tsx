import type { Colour } from "../../../job/index.ts";
import { colourBands } from "../../../standards/index.ts";
import styles from "./colour-swatch.module.css";

/** A short piece of wire in its two colours; the code always stands beside it, so it says nothing itself. */
export function ColourSwatch({ colour }: { colour: Colour | null }) {
  if (!colour) return <span className={styles.swatch} data-none="true" aria-hidden="true" />;
  const { base, stripe, edge } = colourBands(colour);
  const rim = edge ? `${edge} 27% 35%, ${stripe} 35% 65%, ${edge} 65% 73%` : `${stripe} 33% 67%`;
  const background = stripe
    ? `linear-gradient(${base} ${edge ? 27 : 33}%, ${rim}, ${base} ${edge ? 73 : 67}%)`
    : base;
  return <span className={styles.swatch} style={{ background }} aria-hidden="true" />;
}
