import { type Checker, type CheckResult, createChecker } from "../check/index.ts";
import type { Id, Job } from "../job/index.ts";

const results = new WeakMap<Job, Map<Id, CheckResult>>();

/** Checkers of the machines looked at last, the latest one last. */
const checkers = new Map<Id, Checker>();
const MOST_CHECKERS = 3;

function checkerOf(machine: Id): Checker {
  const checker = checkers.get(machine) ?? createChecker(machine);
  checkers.delete(machine);
  checkers.set(machine, checker);
  for (const id of checkers.keys()) {
    if (checkers.size <= MOST_CHECKERS) break;
    checkers.delete(id);
  }
  return checker;
}

/**
 * Roles and findings of the job for one machine, worked out once per document. What an edit did not
 * touch is taken over from the document that was asked about before.
 */
export function analysisOf(job: Job, machine: Id): CheckResult {
  const known = knownAnalysis(job, machine);
  if (known) return known;
  const result = isSettled(job) ? checkerOf(machine).check(job) : createChecker(machine).check(job);
  keepAnalysis(job, result, machine);
  return result;
}

/** The analysis of this very document, where somebody worked it out already. */
export const knownAnalysis = (job: Job, machine: Id): CheckResult | null =>
  results.get(job)?.get(machine) ?? null;

export function keepAnalysis(job: Job, result: CheckResult, machine: Id): void {
  const byMachine = results.get(job) ?? new Map<Id, CheckResult>();
  results.set(job, byMachine.set(machine, result));
}

/** A job that may be changed in place can't be followed: its parts stay the same objects. */
const isSettled = ({ diagram, plugs, links, machines }: Job): boolean =>
  [diagram, diagram.parts, diagram.wires, plugs, links, machines].every(Object.isFrozen);
