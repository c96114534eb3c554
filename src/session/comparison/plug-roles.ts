import { withMeter } from "../../check/index.ts";
import { ask, type Circuit, circuitOf, LinkedNetwork } from "../../circuit/index.ts";
import { type Id, type Job, ownerOf, type PartOf, type Plug } from "../../job/index.ts";
import { meterEvidence } from "../../readings/index.ts";
import {
  adoptedRoles,
  cavitiesOfPins,
  moduleCircuit,
  type PinCircuit,
  paperRoles,
  type Role,
} from "../../roles/index.ts";

/** Roles of all pins of the modules that have a pin in the plug, on one machine. */
export type PlugRoles = (machine: Id) => readonly Role[];

/**
 * The roles that a check of the whole machine would give the pins of one plug, without checking all
 * else; machines that have the same circuit look at it once.
 */
export function plugRoles(job: Job, plug: Plug): PlugRoles {
  const tied = job.links.filter(({ cavity }) => ownerOf(cavity) === plug.id);
  const owners = new Set(tied.map(({ pin }) => ownerOf(pin)));
  const cavityOf = cavitiesOfPins(job.links);
  const seen = new Map<Circuit, readonly SeenModule[]>();
  return (machine) => {
    const circuit = circuitOf(job, machine);
    const modules = seen.get(circuit) ?? modulesIn(job, circuit, owners);
    seen.set(circuit, modules);
    const adopted = adoptedRoles(job.adopted, machine);
    const isMeasured = job.machines.some(
      ({ id, readings }) => id === machine && readings.length > 0,
    );
    return modules.flatMap(({ module, pins }) =>
      paperRoles(module, pins, (pin) => cavityOf.get(pin) ?? null, job.words, adopted).map(
        (role, index) => {
          const { cavity } = role;
          const found = isMeasured && cavity !== null ? meterEvidence(job, machine, cavity) : null;
          return withMeter(role, module.pins[index], found, job.words);
        },
      ),
    );
  };
}

interface SeenModule {
  readonly module: PartOf<"module">;
  readonly pins: readonly PinCircuit[];
}

function modulesIn(job: Job, circuit: Circuit, owners: ReadonlySet<Id>): readonly SeenModule[] {
  const network = new LinkedNetwork();
  network.update(circuit, job.systemVoltage);
  return circuit.parts
    .filter((part): part is PartOf<"module"> => part.kind === "module" && owners.has(part.id))
    .map((module) => ({
      module,
      pins: ask(network, (sight) => moduleCircuit(sight, module)).value,
    }));
}
