import type { Id, Job, PartOf, PinId } from "../../job/index.ts";
import { draftPart } from "./draft.ts";

type Module = PartOf<"module">;
type Behaviour = NonNullable<Module["behaviour"]>;
export type ModulePath = Behaviour["paths"][number];
export type ModuleLoad = NonNullable<Behaviour["loads"]>[number];

function withModule(draft: Job, id: Id, change: (part: Module) => void): void {
  const part = draftPart(draft, id);
  if (part?.kind === "module") change(part);
}

/**
 * Whether all that the module does is told. A module of which nothing is told is unknown; one that
 * is told to do nothing joins none of its pins.
 */
export function setBehaviourTold(draft: Job, id: Id, told: boolean): void {
  withModule(draft, id, (part) => {
    if (!told) delete part.behaviour;
    else part.behaviour ??= { paths: [] };
  });
}

/** Two pins for something new: those that carry no feed come first. */
function twoPins(part: Module): [PinId, PinId] | null {
  const feeds = new Set([...(part.power?.supply ?? []), ...(part.power?.ground ?? [])]);
  const ids = part.pins.map((pin) => pin.id);
  const [a, b] = [...ids.filter((pin) => !feeds.has(pin)), ...ids.filter((pin) => feeds.has(pin))];
  return a === undefined || b === undefined ? null : [a, b];
}

/** Adds a path between a feed and a pin that carries none, where there are such. */
export function addModulePath(draft: Job, id: Id): void {
  withModule(draft, id, (part) => {
    const pins = twoPins(part);
    if (!pins) return;
    const feed = part.power?.supply[0];
    const between: [PinId, PinId] = feed === undefined || feed === pins[0] ? pins : [feed, pins[0]];
    part.behaviour ??= { paths: [] };
    part.behaviour.paths.push({ between, does: "always" });
  });
}

/** Sets fields of a path; `undefined` takes one away. */
export function setModulePath(
  draft: Job,
  id: Id,
  index: number,
  change: { [K in keyof ModulePath]?: ModulePath[K] | undefined },
): void {
  withModule(draft, id, (part) => {
    const path = part.behaviour?.paths[index];
    if (!path) return;
    for (const [name, value] of Object.entries(change)) {
      if (value === undefined) delete path[name as keyof ModulePath];
      else Object.assign(path, { [name]: value });
    }
  });
}

export function removeModulePath(draft: Job, id: Id, index: number): void {
  withModule(draft, id, (part) => {
    part.behaviour?.paths.splice(index, 1);
  });
}

/** Adds a load inside the module, from its feed to its ground where they are known. */
export function addModuleLoad(draft: Job, id: Id): void {
  withModule(draft, id, (part) => {
    const pins = twoPins(part);
    if (!pins) return;
    const [supply] = part.power?.supply ?? [];
    const [ground] = part.power?.ground ?? [];
    const between: [PinId, PinId] = supply && ground ? [supply, ground] : pins;
    part.behaviour ??= { paths: [] };
    part.behaviour.loads = [...(part.behaviour.loads ?? []), { between, ohms: 1000 }];
  });
}

export function setModuleLoad(
  draft: Job,
  id: Id,
  index: number,
  change: Partial<ModuleLoad>,
): void {
  withModule(draft, id, (part) => {
    const load = part.behaviour?.loads?.[index];
    if (load) Object.assign(load, change);
  });
}

export function removeModuleLoad(draft: Job, id: Id, index: number): void {
  withModule(draft, id, (part) => {
    part.behaviour?.loads?.splice(index, 1);
    if (part.behaviour?.loads?.length === 0) delete part.behaviour.loads;
  });
}

/** Sets the volts below which the module sleeps; `undefined`: the usual share of nominal. */
export function setLeastVolts(draft: Job, id: Id, volts: number | undefined): void {
  withModule(draft, id, (part) => {
    const power = part.power ?? { supply: [], ground: [] };
    if (volts === undefined) delete power.minVolts;
    else power.minVolts = volts;
    const told = power.supply.length + power.ground.length > 0 || power.minVolts !== undefined;
    if (told) part.power = power;
    else delete part.power;
  });
}
