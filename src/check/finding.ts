import type { Correction } from "./correction.ts";

export type Severity = "contradiction" | "warning" | "note";

/** One thing worth telling. A contract of the command line. */
export interface Finding {
  /** Rule id, kebab-case. */
  readonly rule: string;
  readonly severity: Severity;
  /** Pins, cavities, parts, wires or readings it is about, the chief one first. */
  readonly subjects: readonly string[];
  readonly message: string;
  /** Ids along the path that proves it. */
  readonly because?: readonly string[];
  /** Ways to put it right, each one edit; the likeliest first. */
  readonly corrections?: readonly Correction[];
  /** The user's reason for setting it aside: it is told, and counts for nothing. */
  readonly setAside?: string;
  /** The reason for which it was set aside on grounds that have changed since. */
  readonly setAsideBefore?: string;
}
