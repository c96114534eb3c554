import type { CavityRef, Id, Job, Reading } from "../job/index.ts";
import type { ExpectedReading, JudgedReading, Prediction, ReadingSetup } from "./prediction.ts";

export * from "./cautions.ts";
export type * from "./prediction.ts";
export * from "./setup-words.ts";

/** PLACEHOLDER, replaced while the solver is built. */
export function predict(_job: Job, _machine: Id, _setup: ReadingSetup): Prediction {
  return { predicted: null, low: null, high: null, floating: true, invalid: null };
}

export function judgeReading(job: Job, machine: Id, reading: Reading): JudgedReading {
  return { id: reading.id, ...predict(job, machine, reading), verdict: "not-comparable" };
}

/** The readings worth taking at one cavity, the most telling first. */
export function expectedAt(
  _job: Job,
  _machine: Id,
  _cavity: CavityRef,
): readonly ExpectedReading[] {
  return [];
}
