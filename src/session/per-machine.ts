import type { Id, Job } from "../job/index.ts";

/** Works something out once for each machine of a job, and keeps it for as long as the job is there. */
export function perMachine<T>(make: (job: Job, machine: Id) => T): (job: Job, machine: Id) => T {
  const kept = new WeakMap<Job, Map<Id, T>>();
  return (job, machine) => {
    const byMachine = kept.get(job) ?? new Map<Id, T>();
    kept.set(job, byMachine);
    if (byMachine.has(machine)) return byMachine.get(machine) as T;
    const made = make(job, machine);
    byMachine.set(machine, made);
    return made;
  };
}
