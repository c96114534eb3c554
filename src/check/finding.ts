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
}
