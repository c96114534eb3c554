import type { Id, Job, PartOf, PinId } from "../../job/index.ts";
import { draftPart, takeOut } from "./draft.ts";

type Module = PartOf<"module">;
export type PinUse = "supply" | "ground" | "none";

/** Whether the module is known to feed or ground itself through a pin. */
export function pinUse(part: Module, pin: PinId): PinUse {
  if (part.power?.supply.includes(pin)) return "supply";
  return part.power?.ground.includes(pin) ? "ground" : "none";
}

/** Says that a module takes its power, or its ground, through a pin; `none` takes that back. */
export function setPinUse(draft: Job, id: Id, pin: PinId, use: PinUse): void {
  const part = draftPart(draft, id);
  if (part?.kind !== "module") return;
  const power = part.power ?? { supply: [], ground: [] };
  takeOut(power.supply, (one) => one === pin);
  takeOut(power.ground, (one) => one === pin);
  if (use !== "none") power[use].push(pin);
  if (power.supply.length + power.ground.length > 0 || power.minVolts !== undefined) {
    part.power = power;
  } else delete part.power;
}

/** Says whether every line of a module is traced, so that a pin without one is not used. */
export function setTraced(draft: Job, id: Id, isTraced: boolean): void {
  const part = draftPart(draft, id);
  if (part?.kind !== "module") return;
  if (isTraced) delete part.untraced;
  else part.untraced = true;
}

/** Adds a source between two pins, live while the module is powered: a sensor supply, a pull-up. */
export function addSource(draft: Job, id: Id): void {
  const part = draftPart(draft, id);
  if (part?.kind !== "module") return;
  const [a, b] = part.pins;
  if (!a || !b) return;
  part.sources = [...(part.sources ?? []), { between: [a.id, b.id], volts: 5, ohms: 100 }];
}

export function removeSource(draft: Job, id: Id, index: number): void {
  const part = draftPart(draft, id);
  if (part?.kind !== "module" || !part.sources) return;
  part.sources.splice(index, 1);
  if (part.sources.length === 0) delete part.sources;
}

export function setSource(
  draft: Job,
  id: Id,
  index: number,
  change: { plus?: PinId; minus?: PinId; volts?: number; ohms?: number },
): void {
  const part = draftPart(draft, id);
  const source = part?.kind === "module" ? part.sources?.[index] : undefined;
  if (!source) return;
  if (change.plus !== undefined) source.between[0] = change.plus;
  if (change.minus !== undefined) source.between[1] = change.minus;
  if (change.volts !== undefined) source.volts = change.volts;
  if (change.ohms !== undefined) source.ohms = change.ohms;
}
