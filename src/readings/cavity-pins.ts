import {
  type CavityRef,
  type Id,
  type Job,
  ownerOf,
  type PinRef,
  type When,
} from "../job/index.ts";
import type { Shared } from "./shared.ts";

/** The pins that a cavity is tied to. */
export const pinsOfCavity = (job: Job, cavity: CavityRef): readonly PinRef[] =>
  job.links.filter((link) => link.cavity === cavity).map((link) => link.pin);

/** Modules that must be unplugged before the harness at a cavity can be metered. */
export function modulesAt({ job, parts }: Shared, cavity: CavityRef): readonly Id[] {
  const owners = new Set(pinsOfCavity(job, cavity).map(ownerOf));
  return [...parts.values()]
    .filter((part) => part.kind === "module" && owners.has(part.id))
    .map(({ id }) => id);
}

/** Ids of all parts and plugs that are unplugged or taken out in a state. */
export const idsOff = ({ unplugged = [], removed = [] }: When): readonly Id[] => [
  ...unplugged,
  ...removed,
];

/** Whether the harness at a cavity is parted from its modules: they, or this plug, are off. */
export function isUnplugged(shared: Shared, cavity: CavityRef, when: When): boolean {
  const off = idsOff(when);
  return off.includes(ownerOf(cavity)) || modulesAt(shared, cavity).every((id) => off.includes(id));
}

export const batteriesOf = ({ parts }: Shared): readonly Id[] =>
  [...parts.values()].filter((part) => part.kind === "battery").map(({ id }) => id);
