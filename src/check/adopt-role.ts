import type { Role } from "../roles/index.ts";
import type { Correction } from "./correction.ts";

/**
 * The role that circuit and meter together leave a pin, for the sheet; none where they leave several
 * or contradict one another. What took a reading to settle holds for the machine it was taken on.
 */
export function roleToAdopt({ pin, fits, meterFits }: Role): readonly Correction[] {
  const [role, another] = fits.filter((one) => meterFits.includes(one));
  if (role === undefined || another !== undefined) return [];
  const byMeter = fits.length > 1;
  return [{ does: "adopt-role", pin, role, ...(byMeter ? { onThisMachine: true } : {}) }];
}
