import type { Id, Job, Part, Wire } from "../job/index.ts";

/** Parts and wires as they are on one machine. */
export interface Circuit {
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
}

/**
 * The diagram with one machine's changes (retrofits, repairs, options) applied in order: what a
 * change is without goes, wires of a part that went go with it, what it adds comes.
 */
export function circuitOf(job: Job, machine: Id | null): Circuit {
  const changes = job.machines.find((one) => one.id === machine)?.changes ?? [];
  let circuit: Circuit = job.diagram;
  for (const change of changes) {
    const without = new Set(change.without ?? []);
    const parts = [
      ...circuit.parts.filter((part) => !without.has(part.id)),
      ...(change.parts ?? []),
    ];
    const present = new Set(parts.map((part) => part.id));
    const attached = (ref: string) => present.has(ref.slice(0, ref.indexOf(":")));
    const wires = [
      ...circuit.wires.filter((wire) => !without.has(wire.id)),
      ...(change.wires ?? []),
    ].filter((wire) => attached(wire.from) && attached(wire.to));
    circuit = { parts, wires };
  }
  return circuit;
}
