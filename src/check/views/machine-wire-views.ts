import type { LinkedNetwork } from "../../circuit/index.ts";
import type { CavityRef, MachineWire, PinRef } from "../../job/index.ts";
import type { MachineWireView } from "../rule.ts";
import { keepFlat, keepInStep, Last } from "./keep.ts";
import type { Now } from "./now.ts";

interface Known {
  readonly here: MachineWire;
  /** The number of the pin that its cavity is tied to; undefined: no part has it. */
  readonly pin: number | undefined;
  /** One, or none where its cavity is tied to no pin. */
  readonly views: readonly MachineWireView[];
}

const UNTIED: readonly MachineWireView[] = [];

/** Looks at the machine's wires, and at those drawn at the pins that their cavities are tied to. */
export class MachineWireViews {
  private readonly last = new Last<readonly MachineWireView[]>();
  private readonly pinAt = new Last<ReadonlyMap<CavityRef, PinRef>>();
  /** In the order of the machine's wires. */
  private known: readonly Known[] = [];

  of({ job: { links }, machine, circuit: { wires }, network }: Now): readonly MachineWireView[] {
    const { name, wires: here } = machine;
    return this.last.of([here, name, links, wires, network.revision], (before) => {
      const pinAt = this.pinAt.of(
        [links],
        () => new Map(links.map((one) => [one.cavity, one.pin])),
      );
      this.known = keepInStep(this.known, here, hereOf, (one, known) =>
        take(network, name, one, pinAt.get(one.cavity), known),
      );
      return keepFlat(before, this.known, viewsOf);
    });
  }
}

const hereOf = ({ here }: Known) => here;
const viewsOf = ({ views }: Known) => views;

function take(
  network: LinkedNetwork,
  machineName: string,
  here: MachineWire,
  ref: PinRef | undefined,
  known: Known | undefined,
): Known {
  if (ref === undefined)
    return known?.views === UNTIED ? known : { here, pin: undefined, views: UNTIED };
  const isAtPin = known?.pin !== undefined && network.isAt(known.pin, ref);
  const pin = isAtPin ? known.pin : network.pin(ref);
  const view = known?.views[0];
  const isTied = view?.pin === ref && view.machineName === machineName;
  if (known && isTied && known.pin === pin && network.hasWiresAt(pin, view.drawn)) return known;
  const drawn = pin === undefined ? [] : network.wiresAt(pin);
  return { here, pin, views: [{ machineName, cavity: here.cavity, pin: ref, here, drawn }] };
}
