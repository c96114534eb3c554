import type { Branch } from "../solve/index.ts";
import type { Names } from "./names.ts";

/** No resistance in a deck is less, as in the solver: two such in parallel still share a current. */
const LEAST_OHMS = 1e-6;

/** What kinds of lines a deck has, in this order, each under its own remark. */
export const SECTIONS = {
  sources: "Sources: volts, and the ohms inside",
  ohms: "Ohms of wires, closed contacts, good fuses, windings and resistors",
  filaments: "Filaments: ohms = hot x sqrt(volts / rated volts), and never below cold",
  junctions: "Diodes and LED lamps: nothing flows up to their volts, then (volts - these) / ohms",
} as const;
export type Section = keyof typeof SECTIONS;

/** One branch as lines of a deck. */
export interface Card {
  readonly section: Section;
  readonly lines: readonly string[];
}

/** Plain figures: SPICE reads `1e-6` and `0.25`, and no unit that could be mistaken for a factor. */
const figure = (value: number): string => String(Number(value.toPrecision(12)));

/** Volts of node `a` over node `b` in an expression. */
function across(a: string, b: string): string {
  if (b === "0") return `V(${a})`;
  return a === "0" ? `(0-V(${b}))` : `V(${a},${b})`;
}

/**
 * `a`, `b`: names of the branch's nodes. `ohms`: what it has in the settled state; of a filament or
 * junction its law counts instead. `name`: what the lines are named after.
 */
export function cardOf(
  { acts }: Branch,
  [a, b]: readonly [string, string],
  ohms: number,
  name: string,
  nodes: Names,
): Card {
  switch (acts.is) {
    case "source": {
      const inside = nodes.of(`${name}_inside`);
      return {
        section: "sources",
        lines: [
          `V${name} ${inside} ${b} ${figure(acts.volts)}`,
          `R${name} ${a} ${inside} ${figure(ohms)}`,
        ],
      };
    }
    case "ohmic":
    case "slide":
      return { section: "ohms", lines: [`R${name} ${a} ${b} ${figure(ohms)}`] };
    case "filament": {
      const volts = across(a, b);
      // below these volts it stays cold; written so, the root has a slope at 0 V too
      const coldBelow = acts.ratedVolts * (acts.cold / acts.hot) ** 2;
      const warmth = `max(abs(${volts}),${figure(coldBelow)})/${figure(acts.ratedVolts)}`;
      return {
        section: "filaments",
        lines: [`B${name} ${a} ${b} I=${volts}/(${figure(acts.hot)}*sqrt(${warmth}))`],
      };
    }
    case "junction": {
      const least = figure(Math.max(LEAST_OHMS, acts.ohms));
      const over = `${across(a, b)}-${figure(acts.volts)}`;
      return {
        section: "junctions",
        lines: [`B${name} ${a} ${b} I=max(0,(${over})/${least})`],
      };
    }
  }
}
