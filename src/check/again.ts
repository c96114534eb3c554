import type { Id } from "../job/index.ts";
import type { Finding } from "./finding.ts";
import type { Views } from "./rule.ts";
import { RULES } from "./rules/index.ts";

const BY_READINGS: ReadonlySet<keyof Views> = new Set(["reading", "readings", "mislaid"]);

const aboutOf: ReadonlyMap<string, keyof Views> = new Map(
  RULES.map(({ id, about }) => [id, about]),
);

/**
 * Whether a finding stands as it was before the last edit while something is being looked at again:
 * ids of readings, and of plugs, as in `CheckedSoFar`. Nothing that is shown of it is of the job as it is.
 */
export function isLookedAtAgain({ rule, subjects }: Finding, again: readonly Id[]): boolean {
  const about = aboutOf.get(rule);
  if (again.length === 0 || about === undefined || !BY_READINGS.has(about)) return false;
  // several readings together, or a whole plug, hang on all that is being looked at
  return about !== "reading" || (subjects[0] !== undefined && again.includes(subjects[0]));
}
