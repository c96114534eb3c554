import { type CavityRef, cavityRef, type Job, type PinRef } from "../../job/index.ts";

/** Cavities of all plugs with the pins they are tied to. */
export type CavityPins = ReadonlyMap<CavityRef, readonly PinRef[]>;

export function cavityPins(job: Job): CavityPins {
  const pins = new Map<CavityRef, PinRef[]>();
  for (const plug of job.plugs) {
    for (const cavity of plug.cavities) pins.set(cavityRef(plug.id, cavity.mark), []);
  }
  for (const { cavity, pin } of job.links) {
    const known = pins.get(cavity);
    if (known) known.push(pin);
    else pins.set(cavity, [pin]);
  }
  return pins;
}
