import type { Wire } from "../../job/index.ts";
import { ohmsPerMetreOfArea, ohmsPerMetreOfGauge } from "../../standards/index.ts";

/** Ω of a wire at 20 °C; null where size or length is not known. */
export function wireOhms(wire: Wire): number | null {
  if (wire.metres === undefined) return null;
  if (wire.mm2 !== undefined) return ohmsPerMetreOfArea(wire.mm2) * wire.metres;
  if (wire.awg !== undefined) return ohmsPerMetreOfGauge(wire.awg) * wire.metres;
  return null;
}
