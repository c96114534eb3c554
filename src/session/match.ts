import { keptOf } from "../base/index.ts";
import {
  type CavityRef,
  cavityRef,
  type Id,
  type Job,
  type Link,
  type Part,
  type PinRef,
  type Plug,
  pinRef,
} from "../job/index.ts";

/** Ties a pin to a cavity in a draft. What either was tied to before is let go: one pin, one cavity. */
export function link(draft: Job, pin: PinRef, cavity: CavityRef): void {
  const kept = draft.links.filter((one) => one.pin !== pin && one.cavity !== cavity);
  const already = draft.links.find((one) => one.pin === pin && one.cavity === cavity);
  if (already && kept.length === draft.links.length - 1) return;
  draft.links = [...kept, already ?? { pin, cavity }];
}

/** Unties everything that a pin or a cavity is tied to, in a draft. */
export function unlink(draft: Job, ref: PinRef | CavityRef): void {
  const kept = draft.links.filter((one) => one.pin !== ref && one.cavity !== ref);
  if (kept.length < draft.links.length) draft.links = kept;
}

/** Unties one pin from one cavity, in a draft. */
export function unlinkPair(draft: Job, pin: PinRef, cavity: CavityRef): void {
  const kept = draft.links.filter((one) => one.pin !== pin || one.cavity !== cavity);
  if (kept.length < draft.links.length) draft.links = kept;
}

/** Which of two things tied by a drag is the pin; null when they are not a module pin and a cavity. */
export function linkBetween(job: Job, a: string, b: string): Link | null {
  const { pins, cavities } = matchables(job);
  if (pins.has(a) && cavities.has(b)) return { pin: a, cavity: b };
  if (pins.has(b) && cavities.has(a)) return { pin: b, cavity: a };
  return null;
}

/** Module pins and cavities of the whole job: what matching ties together. */
export function matchables(job: Job): {
  readonly pins: ReadonlySet<PinRef>;
  readonly cavities: ReadonlySet<CavityRef>;
} {
  return { pins: pinsIn(job.diagram.parts), cavities: cavitiesIn(job.plugs) };
}

/** Several screens ask for these at each edit, of the same lists. */
const pinsIn = keptOf((parts: readonly Part[]) => new Set(parts.flatMap(pinRefsOf)));
const cavitiesIn = keptOf((plugs: readonly Plug[]) => new Set(plugs.flatMap(cavityRefsOf)));

const pinRefsOf = keptOf((part: Part): readonly PinRef[] =>
  part.kind === "module" ? part.pins.map((pin) => pinRef(part.id, pin.id)) : [],
);

const cavityRefsOf = keptOf((plug: Plug): readonly CavityRef[] =>
  plug.cavities.map((cavity) => cavityRef(plug.id, cavity.mark)),
);

/** From each pin to its cavity and from each cavity to its pin; the first one of several. */
export const tiedTo = (job: Pick<Job, "links">): ReadonlyMap<string, string> => tiesIn(job.links);

const tiesIn = keptOf((links: readonly Link[]): ReadonlyMap<string, string> => {
  const ties = new Map<string, string>();
  for (const { pin, cavity } of links) {
    if (!ties.has(pin)) ties.set(pin, cavity);
    if (!ties.has(cavity)) ties.set(cavity, pin);
  }
  return ties;
});

const sameMark = (mark: string) => mark.trim().toUpperCase();

/**
 * A link for each pin of the module whose mark stands beside exactly one cavity of the plug, where
 * neither is tied yet. A cavity that is empty or blocked takes none: no wire can be there.
 */
export function proposeByMarks(job: Job, module: Id, plugId: Id): readonly Link[] {
  const part = job.diagram.parts.find((one) => one.id === module);
  const plug = job.plugs.find((one) => one.id === plugId);
  if (part?.kind !== "module" || !plug) return [];
  const taken = new Set(job.links.flatMap((one) => [one.pin, one.cavity]));
  const proposals: Link[] = [];
  for (const pin of part.pins) {
    const mark = sameMark(pin.id);
    const cavities = plug.cavities.filter((cavity) => sameMark(cavity.mark) === mark);
    const twins = part.pins.filter((other) => sameMark(other.id) === mark);
    const [cavity] = cavities;
    if (!cavity || cavities.length > 1 || twins.length > 1) continue;
    if (cavity.empty || cavity.blocked) continue;
    const one = { pin: pinRef(module, pin.id), cavity: cavityRef(plugId, cavity.mark) };
    if (!taken.has(one.pin) && !taken.has(one.cavity)) proposals.push(one);
  }
  return proposals;
}
