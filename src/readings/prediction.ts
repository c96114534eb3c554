import type { Reading } from "../job/index.ts";

/** A reading to be taken: everything but its value. */
export type ReadingSetup = Omit<Reading, "id" | "value" | "at" | "note">;

/** What a meter would show on a machine that is as drawn. */
export interface Prediction {
  /** Nominal value in the unit of the quantity; null when floating, uncertain or invalid. */
  readonly predicted: number | "OL" | null;
  /** Band that a healthy machine stays within; null with `OL`, floating, uncertain or invalid. */
  readonly low: number | null;
  readonly high: number | null;
  /** Nothing holds the point: a meter shows a few ghost volts. */
  readonly floating: boolean;
  /** Why the method is wrong there, one sentence; null when it is sound. */
  readonly invalid: string | null;
  /** What the reading depends on that nobody has said, one sentence; null when nothing. */
  readonly uncertain: string | null;
  /** What to mind about this very reading, though its method is sound; null when nothing. */
  readonly caution: string | null;
}

export type ReadingVerdict = "inside" | "outside" | "not-comparable" | "invalid";

export interface JudgedReading extends Prediction {
  readonly id: string;
  readonly verdict: ReadingVerdict;
}

/** A reading worth taking at a cavity, with what a healthy machine shows. */
export interface ExpectedReading extends Prediction {
  readonly setup: ReadingSetup;
  /** What it proves, in one sentence. */
  readonly proves: string;
}

/** A low-impedance test near 3 kΩ removes ghost volts (common figure of such testers). */
export const GHOST_VOLTS =
  "Nothing holds this point: the few volts that a meter shows are ghost volts and prove nothing; a low-impedance meter (about 3 kΩ) takes them away.";

const NOTHING = {
  predicted: null,
  low: null,
  high: null,
  floating: false,
  invalid: null,
  uncertain: null,
  caution: null,
} as const;

export const invalidReading = (invalid: string): Prediction => ({ ...NOTHING, invalid });

export const uncertainReading = (uncertain: string): Prediction => ({ ...NOTHING, uncertain });

export const floatingReading = (): Prediction => ({
  ...NOTHING,
  floating: true,
  caution: GHOST_VOLTS,
});

/** An open circuit, as an ohmmeter shows it. */
export const openReading = (): Prediction => ({ ...NOTHING, predicted: "OL" });

export const within = (predicted: number, low: number, high: number): Prediction => ({
  ...NOTHING,
  predicted,
  low: Math.min(low, predicted),
  high: Math.max(high, predicted),
});

/** The same with one thing more to mind. */
export const withCaution = (prediction: Prediction, caution: string | null): Prediction =>
  caution === null
    ? prediction
    : {
        ...prediction,
        caution: prediction.caution === null ? caution : `${prediction.caution} ${caution}`,
      };
