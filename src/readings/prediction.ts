import type { Reading } from "../job/index.ts";

/** A reading to be taken: everything but its value. */
export type ReadingSetup = Omit<Reading, "id" | "value" | "at" | "note">;

/** What a meter would show on a machine that is as drawn. */
export interface Prediction {
  /** Nominal value in the unit of the quantity; null when floating or invalid. */
  readonly predicted: number | "OL" | null;
  /** Band that a healthy machine stays within; null with `OL`, floating or invalid. */
  readonly low: number | null;
  readonly high: number | null;
  /** Nothing holds the point: a meter shows a few ghost volts. */
  readonly floating: boolean;
  /** Why the method is wrong there; null when it is sound. */
  readonly invalid: string | null;
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
