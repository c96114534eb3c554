import { ROLE_NAMES, type RoleName } from "../job/index.ts";
import type { Role } from "./role.ts";
import { listOr, ROLE_IN_WORDS } from "./role-names.ts";

/** `permanent feed`: the role's name without its article, as a table shows it. */
export const wordsForRole = (role: RoleName): string => ROLE_IN_WORDS[role].replace(/^an? /, "");

/** What the live side means at an input and at an output. */
const SIDE_WORDS: Readonly<
  Partial<Record<RoleName, Readonly<Record<"high" | "low" | "neither", string>>>>
> = {
  input: { high: "live when on", low: "grounded when on", neither: "" },
  output: { high: "feeds the load", low: "grounds the load", neither: "load between two pins" },
};

/** Roles that can be listed before the list says no more than "it could be anything". */
const MOST_LISTED = 4;

/**
 * So many roles fit that the circuit says next to nothing yet: a line that is not traced to its end, or
 * one whose switches may be worked by anything.
 */
export const isOpen = ({ fits }: Pick<Role, "fits">): boolean => fits.length > MOST_LISTED;

/** No wire is drawn at it, and its module is still to be traced: then alone every role fits, `unused` too. */
export const isUntraced = ({ fits }: Pick<Role, "fits">): boolean =>
  fits.length === ROLE_NAMES.length;

/**
 * What the circuit says of a pin, in one phrase: `output, grounds the load`; where several roles
 * fit, `permanent feed or input`.
 */
export function wordsForCircuit(role: Pick<Role, "circuitRole" | "circuitSide" | "fits">): string {
  const { circuitRole, circuitSide, fits } = role;
  if (circuitRole === "undecided") {
    if (isUntraced(role)) return "undecided, no line traced here yet";
    if (isOpen(role)) return "undecided, most things fit";
    return listOr(fits.map(wordsForRole));
  }
  const detail = SIDE_WORDS[circuitRole]?.[circuitSide ?? "neither"] ?? "";
  return detail === "" ? wordsForRole(circuitRole) : `${wordsForRole(circuitRole)}, ${detail}`;
}
