import type { Correction } from "../../check/index.ts";
import type { Id, Job } from "../../job/index.ts";

/** Where a correction is made. */
export interface Place {
  /** As the boards show it for the machine at hand. */
  readonly job: Job;
  readonly machine: Id;
}

/** One kind of correction: what its button says, and the one edit that it is. */
export interface CorrectionEdit<C extends Correction = Correction> {
  /** Begins with a verb; also what undo says it takes back. */
  readonly label: (correction: C, place: Place) => string;
  /** Changes a draft. Where what it is about is gone, nothing changes. */
  readonly change: (draft: Job, correction: C, machine: Id) => void;
}

export type Does = Correction["does"];

export type CorrectionOf<D extends Does> = Extract<Correction, { does: D }>;
