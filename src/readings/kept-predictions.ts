import type { Id, Job } from "../job/index.ts";
import type { Prediction, ReadingSetup } from "./prediction.ts";

/** What a prediction follows from, beside the setup itself. */
interface Ground {
  readonly links: Job["links"];
  readonly plugs: Job["plugs"];
  readonly machines: ReadonlyMap<Id, { changes: unknown; kept: Map<string, Prediction> }>;
  readonly systemVoltage: number;
}

const byDiagram = new WeakMap<Job["diagram"], Ground>();

/**
 * Predictions already made for this very circuit, to be added to; null where the job may still be
 * changed in place. While somebody enters readings the diagram stays the same object, and nothing
 * that was worked out before needs working out again.
 */
function keptFor(job: Job, machine: Id): Map<string, Prediction> | null {
  const { diagram, links, plugs, systemVoltage } = job;
  const settled = [diagram, diagram.parts, diagram.wires, links, plugs].every(Object.isFrozen);
  if (!settled) return null;
  const changes = job.machines.find(({ id }) => id === machine)?.changes;
  const known = byDiagram.get(diagram);
  const same =
    known?.links === links && known.plugs === plugs && known.systemVoltage === systemVoltage;
  const own = same ? known.machines.get(machine) : undefined;
  if (own && own.changes === changes) return own.kept;
  const fresh = { changes, kept: new Map<string, Prediction>() };
  const machines = new Map(same ? known.machines : []).set(machine, fresh);
  byDiagram.set(diagram, { links, plugs, machines, systemVoltage });
  return fresh.kept;
}

/** The prediction made before for the same circuit and setup, else the one that `make` makes. */
export function keep(
  job: Job,
  machine: Id,
  { quantity, red, black, when, with: instrument }: ReadingSetup,
  make: () => Prediction,
): Prediction {
  const kept = keptFor(job, machine);
  if (!kept) return make();
  const key = JSON.stringify([quantity, red, black, when, instrument]);
  const known = kept.get(key);
  if (known) return known;
  const made = make();
  kept.set(key, made);
  return made;
}
