import { type CheckResult, checkJob } from "../check/index.ts";
import type { Id, Job } from "../job/index.ts";

const results = new WeakMap<Job, Map<Id, CheckResult>>();

/** Roles and findings of the job for one machine, worked out once per document. */
export function analysisOf(job: Job, machine: Id): CheckResult {
  let byMachine = results.get(job);
  if (!byMachine) {
    byMachine = new Map();
    results.set(job, byMachine);
  }
  let result = byMachine.get(machine);
  if (!result) {
    result = checkJob(job, machine);
    byMachine.set(machine, result);
  }
  return result;
}
