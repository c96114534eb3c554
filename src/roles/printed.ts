import type { Job, ModulePin, RoleName } from "../job/index.ts";
import type { Meaning } from "./lexicon/meaning.ts";
import { readWord } from "./lexicon/read-word.ts";
import { taughtKey } from "./lexicon/taught-words.ts";

const SUPPLIES: readonly RoleName[] = ["supply", "switched-supply", "sensor-supply"];
const GROUNDS: readonly RoleName[] = ["ground", "switched-ground", "sensor-ground"];

type Side = "high" | "low" | null;

/** Whether something that a word may mean is within what the circuit allows. */
export function meaningFits(meaning: Meaning, fits: readonly RoleName[], side: Side): boolean {
  const within = (roles: readonly RoleName[]) => roles.some((role) => fits.includes(role));
  if (meaning.role === "supply") return within(SUPPLIES);
  // The far side of a load between two pins of the module is its return, whatever drives it.
  if (meaning.role === "ground")
    return within(GROUNDS) || (fits.includes("output") && side === null);
  if (!fits.includes(meaning.role)) return false;
  return meaning.side === null || side === null || meaning.side === side;
}

export interface PrintedWord {
  readonly text: string | null;
  readonly meanings: readonly Meaning[];
}

/** The printed word of a module's pin; a number that only repeats the pin's own mark is no word. */
export function printedWord(pin: ModulePin, taught: Job["words"]): PrintedWord {
  const text = pin.printed?.trim() ?? "";
  if (text === "") return { text: null, meanings: [] };
  if (repeatsMark(pin)) return { text, meanings: [] };
  return { text, meanings: readWord(text, taught) };
}

/** Whether what is printed is the number that stands beside the cavity anyway. */
export const repeatsMark = ({ id, printed = "" }: ModulePin): boolean =>
  /\d/.test(printed) && taughtKey(printed) === taughtKey(id);
