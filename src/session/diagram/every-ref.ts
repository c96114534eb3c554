import type { Job, PinRef, Wire } from "../../job/index.ts";
import { plain } from "./draft.ts";

/**
 * Puts every reference to a pin in the job through `rewrite`: wires, links, probes of readings, the
 * wires of machines' changes, adopted roles and findings set aside. Only what differs is written.
 */
export function rewritePinRefs(draft: Job, rewrite: (ref: PinRef) => PinRef): void {
  const job = plain(draft);
  const wires = (before: readonly Wire[], after: Wire[]) =>
    before.forEach((wire, index) => {
      const written = after[index];
      if (!written) return;
      const from = rewrite(wire.from);
      const to = rewrite(wire.to);
      if (from !== wire.from) written.from = from;
      if (to !== wire.to) written.to = to;
    });
  wires(job.diagram.wires, draft.diagram.wires);
  job.links.forEach((link, index) => {
    const pin = rewrite(link.pin);
    const written = draft.links[index];
    if (written && pin !== link.pin) written.pin = pin;
  });
  job.adopted?.forEach(({ pin }, index) => {
    const written = draft.adopted?.[index];
    if (written && rewrite(pin) !== pin) written.pin = rewrite(pin);
  });
  rewriteSetAside(draft, rewrite);
  job.machines.forEach((machine, at) => {
    const written = draft.machines[at];
    if (!written) return;
    machine.readings.forEach((reading, index) => {
      const red = rewrite(reading.red);
      const black = rewrite(reading.black);
      const target = written.readings[index];
      if (target && red !== reading.red) target.red = red;
      if (target && black !== reading.black) target.black = black;
    });
    machine.changes?.forEach((change, index) => {
      const target = written.changes?.[index];
      if (change.wires && target?.wires) wires(change.wires, target.wires);
    });
  });
}

/** Puts all that findings set aside are about, and their paths, through `rewrite`. */
export function rewriteSetAside(draft: Job, rewrite: (ref: string) => string): void {
  plain(draft).setAside?.forEach(({ subjects, because }, index) => {
    const written = draft.setAside?.[index];
    const differs = (list: readonly string[]) => list.some((ref) => rewrite(ref) !== ref);
    if (written && differs(subjects)) written.subjects = subjects.map(rewrite);
    if (written && because && differs(because)) written.because = because.map(rewrite);
  });
}
