import type { Explorer, Network } from "../circuit/index.ts";
import type { Job, Machine, PartOf, Reading } from "../job/index.ts";
import type { JudgedReading } from "../readings/index.ts";
import type { Role } from "../roles/index.ts";
import type { Finding, Severity } from "./finding.ts";

/** Everything that a rule may look at: the job and what was worked out of it, never another rule. */
export interface CheckContext {
  readonly job: Job;
  readonly machine: Machine;
  /** The circuit of this machine. */
  readonly network: Network;
  /** The circuit with every module plugged in and unknown. */
  readonly explorer: Explorer;
  readonly modules: readonly PartOf<"module">[];
  /** One per module pin, in the order of the diagram. */
  readonly roles: readonly Role[];
  /** The machine's readings held against the prediction, in their order. */
  readonly readings: readonly { readonly reading: Reading; readonly judged: JudgedReading }[];
}

export type Found = Omit<Finding, "rule" | "severity">;

/** One rule, one id, one file. */
export interface Rule {
  readonly id: string;
  readonly severity: Severity;
  readonly find: (context: CheckContext) => readonly Found[];
}

export const defineRule = (rule: Rule): Rule => rule;
