import type { Id } from "../../job/index.ts";
import type { Branch, Wiring } from "../solve/index.ts";

/**
 * Times its rating from which a fuse or breaker opens. Blade fuses open within half an hour at
 * 135 % of their rating (ISO 8820, from memory); a breaker is taken to be alike.
 */
export const OPENS_AT = 1.35;

/** A fuse or breaker that carries more than it can. */
export interface Overload {
  readonly part: Id;
  /** Index of its branch. */
  readonly branch: number;
  readonly amps: number;
}

const known = new WeakMap<readonly Branch[], readonly number[]>();

/** Indices of the branches that are fuses and breakers. */
export function protectionsOf({ branches }: Wiring): readonly number[] {
  let found = known.get(branches);
  if (!found) {
    found = branches.flatMap(({ element }, index) =>
      element?.law.is === "protection" ? [index] : [],
    );
    known.set(branches, found);
  }
  return found;
}

/** Whether a branch is one of the fuses and breakers that have opened. */
export const openedIn =
  (blown: ReadonlySet<Id>) =>
  ({ element, owner }: Branch): boolean =>
    element?.law.is === "protection" && owner !== null && blown.has(owner);

/** The one that carries most for its size, as long as it is too much; `carried` as in `protectionsOf`. */
export function worstOverload(
  wiring: Wiring,
  carried: Float64Array,
  blown: ReadonlySet<Id>,
): Overload | null {
  let worst: Overload | null = null;
  let worstTimes = OPENS_AT;
  protectionsOf(wiring).forEach((branch, index) => {
    const { owner: part, element } = wiring.branches[branch] ?? {};
    if (!part || blown.has(part) || element?.law.is !== "protection") return;
    const amps = carried[index] as number;
    const times = amps / element.law.amps;
    // a hair more does not count, so that of two alike in series it is always the same one
    if (times <= worstTimes * (1 + 1e-9)) return;
    worst = { part, branch, amps };
    worstTimes = times;
  });
  return worst;
}
