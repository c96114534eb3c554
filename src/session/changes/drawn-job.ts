import { current, type Draft, isDraft, original } from "immer";
import { circuitOf } from "../../circuit/index.ts";
import { type Id, idsOf, type Job } from "../../job/index.ts";
import { perMachine } from "../per-machine.ts";
import { perDrawing } from "./per-drawing.ts";

/** From what the boards show to the job that it was made of. */
const origins = new WeakMap<Job, Job>();

/**
 * The job with one machine's circuit in the place of its diagram: what the boards show and what
 * edits of the drawing work on. The job itself where the machine changes nothing, and always the
 * same object for the same job. Never solve or check it: the changes would count twice.
 */
export function drawnJob(job: Job, machine: Id): Job {
  return origins.has(job) || changesOf(job, machine).length === 0 ? job : drawAfresh(job, machine);
}

const drawAfresh = perMachine((job: Job, machine: Id): Job => {
  const drawn = { ...job, diagram: drawnDiagram(job, machine) };
  origins.set(drawn, job);
  return drawn;
});

/** The same object for as long as neither the diagram nor the changes are others. */
const drawnDiagram = perDrawing((job, machine): Job["diagram"] => {
  const { parts, wires } = circuitOf(job, machine);
  return { ...job.diagram, parts: [...parts], wires: [...wires] };
});

/**
 * Every id in use in a job, what the machine shown is without included. `job` may be a draft of
 * what the boards show.
 */
export function idsInUse(job: Job): Set<Id> {
  const ids = idsOf(isDraft(job) ? current(job as Draft<Job>) : job);
  const origin = origins.get((isDraft(job) ? original(job) : job) as Job);
  if (origin) for (const id of idsOf(origin)) ids.add(id);
  return ids;
}

/** What the boards show for the machine at hand. */
export const drawnOf = ({ job, machine }: { readonly job: Job; readonly machine: Id }): Job =>
  drawnJob(job, machine);

export type Change = NonNullable<Job["machines"][number]["changes"]>[number];

const NONE: readonly Change[] = [];

/** What makes a machine differ from the diagram, in the order in which it was done. */
export const changesOf = (job: Job, machine: Id): readonly Change[] =>
  job.machines.find(({ id }) => id === machine)?.changes ?? NONE;
