import type { Wire } from "../../job/index.ts";
import { ohmsPerMetreOfArea, ohmsPerMetreOfGauge } from "../../standards/index.ts";

/** Ω of a wire at 20 °C; null where size or length is not known. */
export function wireOhms(wire: Wire): number | null {
  const perMetre = ohmsPerMetre(wire);
  return wire.metres === undefined || perMetre === null ? null : perMetre * wire.metres;
}

/** No wire of a machine is longer (common practice, no source). */
const LONGEST_METRES = 30;
/** Ω of a wire of which nobody has said how long it is, on a healthy machine. */
const MOST_OHMS = 0.5;

/**
 * Least, middle and most Ω of a wire whose size or length is not known: 0 to 0.5 Ω, and where its
 * size is known no more than thirty metres of that have.
 */
export function unknownWireOhms(wire: Wire): { low: number; ohms: number; high: number } {
  const perMetre = ohmsPerMetre(wire);
  const longest = perMetre === null ? MOST_OHMS : perMetre * LONGEST_METRES;
  const high = Math.min(MOST_OHMS, longest);
  return { low: Math.min(1e-3, high / 10), ohms: high / 2, high };
}

function ohmsPerMetre({ mm2, awg }: Wire): number | null {
  if (mm2 !== undefined) return ohmsPerMetreOfArea(mm2);
  return awg === undefined ? null : ohmsPerMetreOfGauge(awg);
}
