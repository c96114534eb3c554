import { Groups } from "../base/index.ts";
import type { OperatingPoint, Settled } from "../circuit/index.ts";
import type { Shared } from "./shared.ts";

/** What stands in a way without being a load: a wire has no element at all. */
const JOINTS: ReadonlySet<string> = new Set([
  "protection",
  "contact",
  "relay-contact",
  "diode",
  "module-path",
]);

/**
 * Which nodes one state of a machine joins over wires, fuses, closed contacts, conducting diodes and
 * what a module closes between its pins, and nothing else. It goes by the parts on the way and never by ohms: a big lamp's cold filament reads less
 * than ten metres of thin wire.
 */
export interface SolidWays {
  /** Whether a way that passes no load leads from one node to the other. */
  joins(a: number, b: number): boolean;
  /** Whether such a way leads from the node to the plus of a battery, a charger or a converter. */
  isFed(node: number): boolean;
}

const waysAt = new WeakMap<OperatingPoint, SolidWays>();

/** Worked out once for each state; `point`: of the same branches, live or dead. */
export function solidWays(
  { parts }: Pick<Shared, "parts">,
  { branches }: Pick<Settled, "branches">,
  point: OperatingPoint,
): SolidWays {
  let found = waysAt.get(point);
  if (found) return found;
  const joined = new Groups(point.volts.length);
  const pluses: number[] = [];
  branches.forEach(({ a, b, owner, element, acts }, index) => {
    if (!Number.isFinite(point.ohms[index]) || owner === null) return;
    if (acts.is === "source") {
      // what a module gives out is no feed: a sensor's supply, a pull-up
      if (parts.get(owner)?.kind !== "module") pluses.push(a);
      return;
    }
    if (element !== null && !JOINTS.has(element.law.is)) return;
    joined.join(a, b);
  });
  const fed = new Set(pluses.map((node) => joined.of(node)));
  found = {
    joins: (a, b) => joined.of(a) === joined.of(b),
    isFed: (node) => fed.has(joined.of(node)),
  };
  waysAt.set(point, found);
  return found;
}
