import { addTo, keptOf } from "../base/index.ts";
import {
  type CavityRef,
  type Id,
  isFixedProbe,
  type Job,
  ownerOf,
  type PinRef,
  type Probe,
  splitRef,
  type When,
} from "../job/index.ts";
import type { Shared } from "./shared.ts";

/** The pins that a cavity is tied to. */
export const pinsOfCavity = ({ links }: Job, cavity: CavityRef): readonly PinRef[] =>
  tiesOf(links).get(cavity) ?? NO_PINS;

const NO_PINS: readonly PinRef[] = [];

const tiesOf = keptOf((links: Job["links"]) => {
  const ties = new Map<CavityRef, PinRef[]>();
  for (const { cavity, pin } of links) addTo(ties, cavity, pin);
  return ties;
});

/** Whether a probe is a cavity that no pin is matched to and that nobody has marked as empty or blocked. */
export function isUnmatched(job: Job, probe: Probe): boolean {
  if (isFixedProbe(probe)) return false;
  const { owner, name } = splitRef(probe);
  const cavity = job.plugs
    .find((plug) => plug.id === owner)
    ?.cavities.find(({ mark }) => mark === name);
  return (
    cavity !== undefined &&
    !cavity.empty &&
    !cavity.blocked &&
    pinsOfCavity(job, probe).length === 0
  );
}

/** Modules that must be unplugged before the harness at a cavity can be metered. */
export function modulesAt({ job, parts }: Shared, cavity: CavityRef): readonly Id[] {
  const owners = new Set(pinsOfCavity(job, cavity).map(ownerOf));
  return [...owners].filter((id) => parts.get(id)?.kind === "module");
}

/** Ids of all parts and plugs that are unplugged or taken out in a state. */
export const idsOff = ({ unplugged = [], removed = [] }: When): readonly Id[] => [
  ...unplugged,
  ...removed,
];

/**
 * Whether the harness at a cavity is parted from its modules: they, or this plug, are off. Of a cavity
 * that is tied to no module nobody has said which that is: then all that it could be must be off.
 */
export function isUnplugged(shared: Shared, cavity: CavityRef, when: When): boolean {
  const off = idsOff(when);
  if (off.includes(ownerOf(cavity))) return true;
  const tied = modulesAt(shared, cavity);
  return (tied.length > 0 ? tied : modulesOfPlug(shared, ownerOf(cavity))).every((id) =>
    off.includes(id),
  );
}

/** Modules that the plug is tied to; all there are where it is tied to none. */
function modulesOfPlug({ job, parts }: Shared, plug: Id): readonly Id[] {
  const all = [...parts.values()].flatMap(({ id, kind }) => (kind === "module" ? [id] : []));
  const owners = new Set(
    job.links.flatMap(({ cavity, pin }) => (ownerOf(cavity) === plug ? [ownerOf(pin)] : [])),
  );
  const own = all.filter((id) => owners.has(id));
  return own.length > 0 ? own : all;
}

export const batteriesOf = ({ parts }: Shared): readonly Id[] =>
  [...parts.values()].filter((part) => part.kind === "battery").map(({ id }) => id);
