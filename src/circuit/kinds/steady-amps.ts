import type { Law } from "./kind.ts";

/** Past this factor a part's ohms at work are so far from its winding's that only the least draw counts. */
const WIDE = 2;

/**
 * Amps that a load draws for as long as it is on at so many volts, hot and turning: what flows while
 * it starts does not count. Of a motor the least that it can. Null where nobody has said its value,
 * where it is made to be on for a moment only, and for what is no load.
 */
export function steadyAmps(law: Law, volts: number): number | null {
  if (law.is === "led") return law.unsaid ? null : (volts - law.volts) / law.ohms;
  if (law.is !== "load" || law.brief || law.ohms === 0 || law.unsaid) return null;
  return volts / (law.ohms * (law.spread[1] > WIDE ? law.spread[1] : 1));
}
