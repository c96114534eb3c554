import type { Id, Job } from "../job/index.ts";
import type { Role } from "../roles/index.ts";
import type { Finding } from "./finding.ts";

export interface CheckResult {
  readonly machine: Id;
  /** One per module pin, in the order of the diagram. */
  readonly roles: readonly Role[];
  /** In a stable order: by rule in the published order, then by subject. */
  readonly findings: readonly Finding[];
  readonly summary: {
    readonly contradictions: number;
    readonly warnings: number;
    readonly notes: number;
  };
}

/** PLACEHOLDER, replaced while the rules are built. */
export function checkJob(_job: Job, machine: Id): CheckResult {
  return {
    machine,
    roles: [],
    findings: [],
    summary: { contradictions: 0, warnings: 0, notes: 0 },
  };
}
