import type { RoleName } from "../../../src/job/index.ts";

/** Why several roles fit a pin, in the order in which they are looked for. */
export const WHY_UNDECIDED = {
  "the line goes on past a page end": (fits) => fits.length > 4,
  "the two ends of a potentiometer": (fits) => fits.includes("sensor-ground"),
  "a strap to ground beside a proper ground": (fits) => fits.includes("ground"),
  "a contact's line with a load on it": (fits) => fits.includes("output"),
  "a contact to ground that may be the way back": (fits) => fits.includes("switched-ground"),
  "a contact that may be the feed": (fits) => fits.includes("switched-supply"),
  "something else": () => true,
} as const satisfies Readonly<Record<string, (fits: readonly RoleName[]) => boolean>>;

export type Undecided = keyof typeof WHY_UNDECIDED;

export function whyUndecided(fits: readonly RoleName[]): Undecided {
  for (const [why, isSo] of Object.entries(WHY_UNDECIDED)) if (isSo(fits)) return why as Undecided;
  throw new Error("no reason");
}
