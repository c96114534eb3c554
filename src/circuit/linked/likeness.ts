import type { Part } from "../../job/index.ts";
import { springPositions } from "../kinds/index.ts";
import type { Circuit } from "../machine-circuit.ts";

/** Where a part is drawn, and how much of something it has: neither says what leads where. */
const NO_DIFFERENCE: ReadonlySet<string> = new Set([
  "at",
  "turn",
  "sheet",
  "unit",
  "photo",
  "size",
  "ohms",
  "volts",
  "amps",
  "watts",
  "outVolts",
  "ohmsMin",
  "ohmsMax",
  "ohmsPull",
  "ohmsHold",
  "coilOhms",
  "coilResistor",
  "contactAmps",
  "pullIn",
  "dropOut",
]);

/**
 * Whether two states of a part lead current in the same ways under the same conditions. Any field
 * that is not known here counts as one that makes a difference.
 */
export function isAlike(a: Part, b: Part): boolean {
  if (a === b) return true;
  return a.kind === b.kind && a.id === b.id && likenessOf(a) === likenessOf(b);
}

const LABEL: ReadonlySet<string> = new Set(["label"]);
const SWITCH_REST: ReadonlySet<string> = new Set(["label", "rest", "springReturn"]);

const known = new WeakMap<Part, string>();

function likenessOf(part: Part): string {
  // One that may still be changed in place may become something else.
  if (!Object.isFrozen(part)) return JSON.stringify(whatMatters(part));
  let found = known.get(part);
  if (found === undefined) {
    found = JSON.stringify(whatMatters(part));
    known.set(part, found);
  }
  return found;
}

function whatMatters(part: Part): object {
  const fields = without(part, NO_DIFFERENCE);
  switch (part.kind) {
    case "module":
      // The words beside its pins are judged apart from what the pins are.
      return { ...fields, pins: part.pins.map(({ id }) => id) };
    case "offpage":
      // Equal labels are one line.
      return fields;
    case "switch":
      // Where it rests counts only for the positions that it does not stay in.
      return [without(fields, SWITCH_REST), springPositions(part)];
    default:
      return without(fields, LABEL);
  }
}

/** Where a part is drawn, and what is printed on it. */
const NOT_ELECTRIC: ReadonlySet<string> = new Set(["at", "turn", "sheet", "unit", "photo", "size"]);

/** What of a wire makes no difference to any volt, ohm or amp. */
const WIRE_NOT_ELECTRIC: ReadonlySet<string> = new Set(["colour", "number", "path"]);

/**
 * Whether two states of a circuit are the same to any meter: the same parts and wires in the same
 * order, with the same values. Any field that is not known here counts as one that makes a difference.
 */
export function isElectricallySame(a: Circuit, b: Circuit): boolean {
  const same = <T extends object>(
    one: readonly T[],
    other: readonly T[],
    electric: (thing: T) => string,
  ) =>
    one === other ||
    (one.length === other.length &&
      one.every((thing, index) => {
        const now = other[index] as T;
        return thing === now || electric(thing) === electric(now);
      }));
  return (
    same(a.parts, b.parts, (part) => {
      const fields = without(part, NOT_ELECTRIC);
      return JSON.stringify(
        part.kind === "module" ? { ...fields, pins: part.pins.map(({ id }) => id) } : fields,
      );
    }) && same(a.wires, b.wires, (wire) => JSON.stringify(without(wire, WIRE_NOT_ELECTRIC)))
  );
}

const without = (thing: object, names: ReadonlySet<string>): object =>
  Object.fromEntries(Object.entries(thing).filter(([name]) => !names.has(name)));
