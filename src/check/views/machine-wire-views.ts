import type { CavityRef, PinRef } from "../../job/index.ts";
import type { MachineWireView } from "../rule.ts";
import { keepList, Last, Views } from "./keep.ts";
import type { Now } from "./now.ts";

/** Looks at the machine's wires, and at those drawn at the pins that their cavities are tied to. */
export class MachineWireViews {
  private readonly last = new Last<readonly MachineWireView[]>();
  private readonly views = new Views<object, MachineWireView>();

  of({ job: { links }, machine, circuit: { wires }, network }: Now): readonly MachineWireView[] {
    const { name: machineName, wires: here } = machine;
    const inputs = [here, machineName, links, wires, network.revision];
    return this.last.of(inputs, (before) => {
      if (here.length === 0) return keepList(before, []);
      const pinAt = new Map<CavityRef, PinRef>(links.map(({ cavity, pin }) => [cavity, pin]));
      const views = here.flatMap((one): [object, MachineWireView][] => {
        const { cavity } = one;
        const ref = pinAt.get(cavity);
        if (ref === undefined) return [];
        const pin = network.pin(ref);
        const drawn = pin === undefined ? [] : network.wiresAt(pin);
        return [[one, { machineName, cavity, pin: ref, here: one, drawn }]];
      });
      return keepList(before, this.views.of(views));
    });
  }
}
