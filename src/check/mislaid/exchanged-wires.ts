import { circuitOf } from "../../circuit/index.ts";
import type { Id, Job, PinRef } from "../../job/index.ts";

/** The job of a machine whose loom has the wires of two pins exchanged. */
export function withExchangedWires(job: Job, machine: Id, a: PinRef, b: PinRef): Job {
  const { parts, wires } = circuitOf(job, machine);
  const moved = (ref: PinRef) => (ref === a ? b : ref === b ? a : ref);
  return {
    ...job,
    links: [...job.links],
    plugs: [...job.plugs],
    diagram: {
      ...job.diagram,
      parts: [...parts],
      wires: wires.map((wire) => ({ ...wire, from: moved(wire.from), to: moved(wire.to) })),
    },
    machines: job.machines.map((one) => {
      if (one.id !== machine) return one;
      const { changes: _, ...rest } = one;
      return rest;
    }),
  };
}
