import { type Branch, COPPER, type Setting, type Spread } from "../circuit/index.ts";

/** Within what a healthy machine's parts may lie, where the solver's own limits don't say it all. */
export interface Limits {
  /** Volts of the battery at rest as measured on this machine; null while nobody measured them. */
  readonly battery: Spread | null;
}

/** −1: at the lower limit; +1: at the upper. */
export type Edge = -1 | 1;

/** To which limit the ohms and the volts of a branch are pushed. */
export interface Push {
  readonly ohms: Edge;
  readonly volts: Edge;
}

/** A filament's cold ohms lie between these shares of its hot ones: 1/16 to 1/8. */
const COLDEST = 1 / 16;
const WARMEST = 1 / 8;

/**
 * Factors on the internal ohms of a battery, fresh and warm to tired and cold: three times 10 mΩ
 * take 12.6 V to 9.6 V at 100 A, the least that passes the usual load test (common practice, no
 * source).
 */
const INTERNAL: Spread = [0.5, 3];

/** The numbers of one branch at the limits that it is pushed to. */
export function atEdge(branch: Branch, push: Push, limits: Limits): Setting {
  const { acts } = branch;
  const up = push.ohms > 0;
  const side = up ? 1 : 0;
  switch (acts.is) {
    case "ohmic": {
      const ohms = coilAtEdge(branch, side) ?? (up ? acts.high : acts.low);
      return { ohms, cold: ohms, volts: 0 };
    }
    case "slide": {
      const ohms = acts.rising === up ? acts.track : 0;
      return { ohms, cold: ohms, volts: 0 };
    }
    case "filament": {
      const ohms = acts.hot * acts.spread[side];
      return { ohms, cold: ohms * (up ? WARMEST : COLDEST), volts: 0 };
    }
    case "source": {
      const isBattery = isBatteryBranch(branch);
      const [low, high] = (isBattery ? limits.battery : null) ?? [acts.low, acts.high];
      const ohms = isBattery ? acts.ohms * INTERNAL[side] : acts.ohms;
      return { ohms, cold: ohms, volts: push.volts > 0 ? high : low };
    }
    case "junction": {
      const ohms = acts.spread ? acts.ohms * acts.spread[side] : acts.ohms;
      return { ohms, cold: ohms, volts: push.volts > 0 ? acts.high : acts.low };
    }
  }
}

/** A coil's winding, not the resistor beside it. */
function coilAtEdge({ acts, element }: Branch, side: 0 | 1): number | null {
  if (acts.is !== "ohmic" || element?.law.is !== "coil" || acts.ohms !== element.law.ohms)
    return null;
  return acts.ohms * (element.law.unsaid ?? COPPER)[side];
}

/** A source that is there whatever the engine and the modules do. */
const isBatteryBranch = ({ element }: Branch): boolean =>
  element?.law.is === "source" && element.law.live === "always";
