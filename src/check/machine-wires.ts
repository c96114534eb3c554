import type { Network } from "../circuit/index.ts";
import type { CavityRef, Job, Machine, MachineWire, PinRef, Wire } from "../job/index.ts";

/** A cavity's wire as found on a machine beside the wires drawn at the pin that it is tied to. */
export interface WireBesideDrawing {
  readonly cavity: CavityRef;
  readonly pin: PinRef;
  readonly here: MachineWire;
  readonly drawn: readonly Wire[];
}

export function machineWires(
  job: Job,
  machine: Machine,
  network: Network,
): readonly WireBesideDrawing[] {
  const pinAt = new Map(job.links.map((link) => [link.cavity, link.pin]));
  return machine.wires.flatMap((here) => {
    const pin = pinAt.get(here.cavity);
    if (pin === undefined) return [];
    const drawn = (network.hops.get(pin) ?? []).flatMap(({ wire }) => {
      const found = wire === null ? undefined : network.wires.get(wire);
      return found ? [found] : [];
    });
    return [{ cavity: here.cavity, pin, here, drawn }];
  });
}
