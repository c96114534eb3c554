import { differenceCiede2000, useMode as learnMode, modeLab65 } from "culori/fn";

/** CIE 1976 L*a*b* against the white D65, L* from 0 to 100. */
export type Lab = readonly [l: number, a: number, b: number];

learnMode(modeLab65);
const ciede2000 = differenceCiede2000();

/**
 * How different two colours look, by CIEDE2000 (ISO/CIE 11664-6) with all weights 1: about 1 is just
 * seen side by side, 10 is plain.
 */
export function colourDifference([l, a, b]: Lab, [l2, a2, b2]: Lab): number {
  return ciede2000({ mode: "lab65", l, a, b }, { mode: "lab65", l: l2, a: a2, b: b2 });
}
