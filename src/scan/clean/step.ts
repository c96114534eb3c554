import type { Ink } from "./inks.ts";

/** One step of cleaning a picture. The original is kept: a step is undone by leaving it out. */
export type CleanStep =
  /** Shadows and the paper's tone made white. */
  | { readonly does: "flatten" }
  /** What is as dark as `black` becomes black, as bright as `white` white; 0 to 255, black below white. */
  | { readonly does: "contrast"; readonly black: number; readonly white: number }
  /** Ink and paper alone. `window` in pixels, odd; `k` as Sauvola has it, 0.2 to 0.5. */
  | { readonly does: "black-and-white"; readonly window: number; readonly k: number }
  /** Pieces of ink no larger than `largest` pixels either way, alone on the paper, removed. */
  | { readonly does: "specks"; readonly largest: number }
  /** Print of the other side: faint ink removed, but what hangs on ink of `sure` of full darkness. */
  | { readonly does: "bleed-through"; readonly sure: number }
  /** Of the inks only these kept. */
  | { readonly does: "inks"; readonly keep: readonly Ink[] };

/** What each step does when the user has set nothing. */
export const USUAL_STEPS = {
  flatten: { does: "flatten" },
  contrast: { does: "contrast", black: 40, white: 225 },
  "black-and-white": { does: "black-and-white", window: 41, k: 0.25 },
  specks: { does: "specks", largest: 4 },
  "bleed-through": { does: "bleed-through", sure: 0.5 },
  inks: { does: "inks", keep: ["black"] },
} as const satisfies { readonly [Does in CleanStep["does"]]: CleanStep & { readonly does: Does } };
