import type { Id, Job } from "../../job/index.ts";

/**
 * Works something out that hangs on the diagram and on the changes of a machine alone, and keeps it
 * until an edit touches either.
 */
export function perDrawing<T>(make: (job: Job, machine: Id) => T): (job: Job, machine: Id) => T {
  const kept = new WeakMap<object, { readonly diagram: Job["diagram"]; readonly made: T }>();
  return (job, machine) => {
    const changes = job.machines.find(({ id }) => id === machine)?.changes;
    const known = changes && kept.get(changes);
    if (known && known.diagram === job.diagram) return known.made;
    const made = make(job, machine);
    if (changes) kept.set(changes, { diagram: job.diagram, made });
    return made;
  };
}
