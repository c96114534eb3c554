import type { Lab } from "./colour-difference.ts";
import { differenceBeyondShade } from "./ranked.ts";
import type { Run } from "./runs-across.ts";

/** What looks like a ground is no stripe from so many breadths of the wire on. */
const BESIDE = 2;
/** CIEDE2000 beyond shade, within so many stops, under which two colours are one surface. */
const ALIKE = 9;
const SHADE = 1.2;
/** L* by which a dark line in a ground lies under what is on both sides of it. */
const DEEP = 7;
/** What is thinner, of the wire, is a line. */
const THIN = 0.4;

/** Whether two colours look like one surface in light and shade, within so many stops. */
export const isOneSurface = (one: Lab, other: Lab, stops = SHADE): boolean =>
  differenceBeyondShade(one, other, stops) < ALIKE;

/**
 * Whether what looks like a ground beside a wire may be a stripe in it: not far beyond the wire's edge
 * its own colour comes back, or a line runs through that ground as at a wire's edge. `at` is the ground's
 * run, `step` leads away from the wire, `within` are the wire's runs.
 */
export function mayBeStripe(
  rows: readonly (Lab | null)[],
  runs: readonly Run[],
  within: readonly Run[],
  at: number,
  step: 1 | -1,
): boolean {
  const ground = runs[at] as Run;
  const isWire = (colour: Lab) => within.some((one) => isOneSurface(one.colour, colour));
  const breadth = (within.at(-1)?.to ?? 0) - (within[0]?.from ?? 0);
  const edge = step === 1 ? ground.from : ground.to - 1;
  // The brightest row of the ground so far, and the darkest since.
  let [bright, dark] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let index = at;
  for (let row = edge; Math.abs(row - edge) < BESIDE * breadth; row += step) {
    const last = runs[index];
    if (last && (step === 1 ? row >= last.to : row < last.from)) index += step;
    const run = runs[index];
    if (!run) return false;
    const isGround = index === at || isOneSurface(run.colour, ground.colour);
    if (!isGround) {
      const beyond = runs[index + step];
      const isLine = run.to - run.from < THIN * breadth;
      return (
        isWire(run.colour) || (isLine && !!beyond && isOneSurface(beyond.colour, ground.colour))
      );
    }
    const colour = rows[row];
    if (!colour) continue;
    if (isOneSurface(colour, ground.colour)) {
      if (colour[0] - dark >= DEEP) return true;
      if (colour[0] > bright) [bright, dark] = [colour[0], Number.POSITIVE_INFINITY];
    } else if (bright > 0 && isWire(colour)) return true;
    if (bright - colour[0] >= DEEP) dark = Math.min(dark, colour[0]);
  }
  return false;
}
