import { JOB_FORMAT, JOB_VERSION } from "./schema/job.ts";
import type { Id, Job } from "./types.ts";

/** A job with nothing traced yet: one machine, no sheet, no plug. */
export function newJob(title: string, systemVoltage: number): Job {
  return {
    format: JOB_FORMAT,
    version: JOB_VERSION,
    title,
    systemVoltage,
    diagram: { sheets: [], parts: [], wires: [] },
    plugs: [],
    links: [],
    machines: [{ id: "machine1", name: "This machine", wires: [], readings: [], trials: [] }],
  };
}

/** Every id in use anywhere in the job. */
export function idsOf(job: Job): Set<Id> {
  const ids = new Set<Id>();
  const take = (things: readonly { id: Id }[] | undefined) => {
    for (const thing of things ?? []) ids.add(thing.id);
  };
  take(job.diagram.sheets);
  take(job.diagram.parts);
  take(job.diagram.wires);
  take(job.plugs);
  take(job.machines);
  take(job.standIns);
  for (const machine of job.machines) {
    take(machine.readings);
    take(machine.trials);
    take(machine.firstChecks);
    take(machine.recordings);
    for (const change of machine.changes ?? []) {
      take(change.parts);
      take(change.wires);
    }
  }
  return ids;
}

/** The first of `letter1`, `letter2` ... that is in no use. */
export function freeId(used: ReadonlySet<Id>, letter: string): Id {
  let number = 1;
  while (used.has(`${letter}${number}`)) number++;
  return `${letter}${number}`;
}
