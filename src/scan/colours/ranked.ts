import { labOf, xyzOfLab } from "./adaptation.ts";
import { colourDifference, type Lab } from "./colour-difference.ts";
import { INSULATION_CODES, type InsulationCode, looksOf } from "./insulation.ts";

/** One code that a colour may be. */
export interface RankedCode {
  readonly code: InsulationCode;
  /** CIEDE2000 to the nearest shade sold, with what it takes to bring the light to one level; 0: alike. */
  readonly deltaE: number;
}

/** How much brighter or darker than even light a wire may lie, in photographic stops. */
const STOPS = [-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1, 1.25, 1.5];
/** What a stop costs, so that a grey is not simply a white in shade (our choice). */
const COST_OF_STOP = 7;

/** The colour with so many stops more light on it. */
function withLight(colour: Lab, stops: number): Lab {
  const [x, y, z] = xyzOfLab(colour);
  const by = 2 ** stops;
  return labOf([x * by, y * by, z * by]);
}

/** Every code by how near it comes, nearest first. */
export function rankedCodes(colour: Lab): readonly RankedCode[] {
  const lit = STOPS.map((stops) => ({
    colour: withLight(colour, stops),
    cost: COST_OF_STOP * Math.abs(stops),
  }));
  return INSULATION_CODES.map((code) => ({
    code,
    deltaE: Math.min(
      ...looksOf(code).flatMap((look) =>
        lit.map((one) => Math.hypot(colourDifference(one.colour, look), one.cost)),
      ),
    ),
  })).toSorted((one, other) => one.deltaE - other.deltaE);
}

/** The most that light and shade may be asked to explain when they are brought to one lightness. */
const DARKEST = 0.002;

/**
 * How different two colours are beyond what more or less light on one of them makes, within so many
 * photographic stops: CIEDE2000 with the one brought as near to the other's light as those allow.
 */
export function differenceBeyondShade(one: Lab, other: Lab, stops: number): number {
  const apart = Math.log2(
    Math.max(DARKEST, xyzOfLab(other)[1]) / Math.max(DARKEST, xyzOfLab(one)[1]),
  );
  return colourDifference(withLight(one, Math.min(stops, Math.max(-stops, apart))), other);
}
