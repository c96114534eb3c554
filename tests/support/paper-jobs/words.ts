/**
 * Words that stand beside module pins on diagrams and what they may mean, written down by hand from
 * the trade's usage (common practice, no source) and held against nothing but the published page of
 * roles. Deliberately few and plain: a word whose meaning could be argued about judges nothing.
 */
import type { RoleName } from "../../../src/job/index.ts";

/** Every role of the published page. */
export const ROLES: readonly RoleName[] = [
  "supply",
  "switched-supply",
  "ground",
  "switched-ground",
  "input",
  "output",
  "sensor-supply",
  "sensor-ground",
  "signal",
  "unused",
];

export type Side = "high" | "low" | null;

export interface Word {
  readonly text: string;
  readonly roles: readonly RoleName[];
  /** The side that the word itself states. */
  readonly side?: "high" | "low";
}

const word = (text: string, ...roles: readonly RoleName[]): Word => ({ text, roles });

export const WORDS: readonly Word[] = [
  word("PWR", "supply"),
  word("BATT", "supply"),
  word("B+", "supply"),
  word("POWER IN", "supply"),
  word("IGN", "switched-supply"),
  word("IGNITION", "switched-supply"),
  word("ACC", "switched-supply"),
  word("KEY ON", "switched-supply", "input"),
  word("GND", "ground"),
  word("GROUND", "ground"),
  word("CHASSIS", "ground"),
  word("RTN", "ground"),
  word("SW GND", "switched-ground"),
  word("INPUT", "input"),
  word("LAMP SW", "input"),
  word("LEVEL SW", "input"),
  word("SENDER", "input"),
  word("PRESSURE", "input"),
  word("OUT", "output"),
  word("PUMP OUT", "output"),
  word("LAMP", "output"),
  word("VALVE", "output"),
  word("SOLENOID", "output"),
  { text: "HIGH SIDE OUT", roles: ["output"], side: "high" },
  { text: "LOW SIDE OUT", roles: ["output"], side: "low" },
  word("5V", "sensor-supply"),
  word("SENS PWR", "sensor-supply"),
  word("SENS GND", "sensor-ground"),
  word("CAN H", "signal"),
  word("CAN L", "signal"),
  word("DATA", "signal"),
  word("NC", "unused"),
  word("SPARE", "unused"),
  word("NOT USED", "unused"),
];

const SUPPLIES: readonly RoleName[] = ["supply", "switched-supply", "sensor-supply"];
const GROUNDS: readonly RoleName[] = ["ground", "switched-ground", "sensor-ground"];

/** Whether a word may stand at a pin of these roles, as the published page has it. */
export function mayStand(
  { roles, side }: Word,
  at: { readonly fits: readonly RoleName[]; readonly side: Side },
): boolean {
  const hasAny = (some: readonly RoleName[]) => some.some((role) => at.fits.includes(role));
  return roles.some((role) => {
    if (role === "supply") return hasAny(SUPPLIES);
    if (role === "ground") return hasAny(GROUNDS) || (hasAny(["output"]) && at.side === null);
    return hasAny([role]) && (side === undefined || at.side === null || at.side === side);
  });
}

const BY_TEXT = new Map(WORDS.map((one) => [one.text, one]));

/** The word of this text; null for a text that means nothing. */
export const wordOf = (text: string | undefined): Word | null =>
  (text !== undefined && BY_TEXT.get(text)) || null;
