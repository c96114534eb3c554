import { circuitOf } from "../circuit/index.ts";
import {
  type CavityRef,
  type Id,
  type Job,
  ownerOf,
  type PinRef,
  type When,
} from "../job/index.ts";

/** The pins that a cavity is tied to. */
export const pinsOfCavity = (job: Job, cavity: CavityRef): readonly PinRef[] =>
  job.links.filter((link) => link.cavity === cavity).map((link) => link.pin);

/** Modules that must be unplugged before the harness at a cavity can be metered. */
export function modulesAt(job: Job, machine: Id, cavity: CavityRef): readonly Id[] {
  const { parts } = circuitOf(job, machine);
  const owners = new Set(pinsOfCavity(job, cavity).map(ownerOf));
  return parts.filter((part) => part.kind === "module" && owners.has(part.id)).map(({ id }) => id);
}

/** Whether the harness at a cavity is parted from its modules: they, or this plug, are off. */
export function isUnplugged(job: Job, machine: Id, cavity: CavityRef, when: When): boolean {
  const off = [...(when.unplugged ?? []), ...(when.removed ?? [])];
  return (
    off.includes(ownerOf(cavity)) || modulesAt(job, machine, cavity).every((id) => off.includes(id))
  );
}

export const batteriesOf = (job: Job, machine: Id): readonly Id[] =>
  circuitOf(job, machine)
    .parts.filter((part) => part.kind === "battery")
    .map(({ id }) => id);
