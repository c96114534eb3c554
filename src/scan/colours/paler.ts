import { D65, labOf, type Xyz, xyzOfLab } from "./adaptation.ts";
import { colourDifference, type Lab } from "./colour-difference.ts";

/** CIEDE2000 within which a colour is taken as a mixture. */
const MIXED = 9;

/** Whether a colour is another with white light over it, as in a gleam. */
export function isPaler(base: Lab, colour: Lab): boolean {
  if (colour[0] < base[0] + 6) return false;
  const own = xyzOfLab(base);
  for (const left of [0.25, 0.5, 0.75, 1]) {
    // As much white as brings it to the same light.
    const white = xyzOfLab(colour)[1] - left * own[1];
    if (white <= 0) continue;
    const mixed = own.map((one, i) => left * one + white * (D65[i] as number));
    if (colourDifference(labOf(mixed as unknown as Xyz), colour) < MIXED) return true;
  }
  return false;
}
