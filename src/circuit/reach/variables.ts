import type { Id, PartOf, PinId, Position } from "../../job/index.ts";
import type { ValuesOf } from "./conditions.ts";

/** Something whose state decides whether a path conducts. */
export type Variable =
  | { readonly is: "switch"; readonly part: PartOf<"switch"> }
  /** A pin of the judged module, tried open, at supply and at ground. */
  | { readonly is: "own-pin"; readonly pin: PinId }
  /** A relay whose state does not follow from the switches alone. */
  | { readonly is: "relay"; readonly part: Id }
  | { readonly is: "engine" }
  /** A feed or ground that the user says lies beyond a page end, switched somewhere there. */
  | { readonly is: "beyond"; readonly part: Id };

export const OWN_PIN = { open: 1, high: 2, low: 4 } as const;
export const RELAY = { rested: 1, pulled: 2 } as const;
export const TWO_STATE = { off: 1, on: 2 } as const;

/** Positions past this many do not fit a cube's bits: such a switch is a bound. */
export const MOST_POSITIONS = 31;

/** Numbers the variables of one exploration as they are met. */
export interface Variables {
  readonly valuesOf: ValuesOf;
  at(variable: number): Variable;
  numberOf(variable: Variable): number;
}

const keyOf = (variable: Variable): string => {
  switch (variable.is) {
    case "switch":
      return `switch:${variable.part.id}`;
    case "own-pin":
      return `own-pin:${variable.pin}`;
    case "engine":
      return "engine";
    default:
      return `${variable.is}:${variable.part}`;
  }
};

function allValues(variable: Variable): number {
  if (variable.is === "switch") return 2 ** variable.part.positions.length - 1;
  return variable.is === "own-pin" ? 7 : 3;
}

export function createVariables(): Variables {
  const list: Variable[] = [];
  const values: number[] = [];
  const numbers = new Map<string, number>();
  return {
    valuesOf: (variable) => values[variable] ?? 0,
    at: (variable) => list[variable] as Variable,
    numberOf: (variable) => {
      const key = keyOf(variable);
      const known = numbers.get(key);
      if (known !== undefined) return known;
      numbers.set(key, list.length);
      values.push(allValues(variable));
      return list.push(variable) - 1;
    },
  };
}

/** Bits of the listed positions of a switch. */
export function positionBits(part: PartOf<"switch">, positions: readonly Position[]): number {
  let bits = 0;
  for (const position of positions) {
    const index = part.positions.indexOf(position);
    if (index >= 0) bits |= 1 << index;
  }
  return bits;
}

export const positionsOfBits = (part: PartOf<"switch">, bits: number): readonly Position[] =>
  part.positions.filter((_, index) => (bits & (1 << index)) !== 0);
