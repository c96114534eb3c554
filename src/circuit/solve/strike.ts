import type { PinId } from "../../job/index.ts";
import { type Element, type ElementFate, EXTRA_OHMS, LEAK_OHMS } from "../kinds/index.ts";
import type { Acts, Branch, Lowered } from "./branch.ts";
import { SHORT_OHMS } from "./fault-branches.ts";

const exactly = (ohms: number): Acts => ({ is: "ohmic", ohms, low: ohms, high: ohms });

/** What the name of a point inside a part starts with, among the names of its pins. */
export const INSIDE = "inside ";

/**
 * A healthy element after it failed. Its first branch is what it does; further ones are what is
 * fitted across it, and stay. A pin that starts with `INSIDE` is a point inside the part.
 */
export const strike = (
  healthy: Lowered,
  element: Element,
  fates: readonly ElementFate[],
): Lowered => fates.reduce((lowered, fate) => befall(lowered, element, fate), healthy);

function befall(lowered: Lowered, element: Element, fate: ElementFate): Lowered {
  const { law, part, a, b } = element;
  const [main, ...across] = lowered.branches;
  const bare = { a, b, owner: part, element, gate: null, closedIn: null } as const;
  const beside = (acts: Acts): Branch<PinId> => ({ ...bare, element: null, acts });
  switch (fate) {
    case "open":
      return { branches: across, deciders: withoutCoil(lowered, law.is), unknowns: [] };
    case "joined":
      return {
        branches: [...lowered.branches, beside(exactly(SHORT_OHMS))],
        deciders: withoutCoil(lowered, law.is),
        unknowns: [],
      };
    case "leak":
      return { ...lowered, branches: [...lowered.branches, beside(exactly(LEAK_OHMS))] };
    case "extra-ohms": {
      if (!main) return lowered;
      const inside: PinId = `${INSIDE}${main.a} ${main.b}`;
      return {
        ...lowered,
        branches: [
          { ...main, b: inside },
          { ...bare, element: null, a: inside, b: main.b, acts: exactly(EXTRA_OHMS) },
          ...across,
        ],
        // an armature feels what lies across its winding alone
        deciders: lowered.deciders.map((one) => (one.is === "coil" ? { ...one, b: inside } : one)),
      };
    }
    case "held-rested":
    case "held-pulled": {
      const stays = main?.gate?.on === (fate === "held-pulled");
      return {
        ...lowered,
        branches: main && stays ? [{ ...main, gate: null }, ...across] : across,
      };
    }
    case "dead": {
      if (law.is !== "source" && law.is !== "module-path") return lowered;
      const rest = law.is === "source" ? law.restOhms : undefined;
      return {
        branches: rest === undefined ? [] : [{ ...bare, acts: exactly(rest) }],
        deciders: [],
        unknowns: [],
      };
    }
  }
}

const withoutCoil = ({ deciders }: Lowered, is: Element["law"]["is"]) =>
  is === "coil" ? [] : deciders;
