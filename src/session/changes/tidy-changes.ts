import {
  type Id,
  type Job,
  ownerOf,
  type Part,
  pinIdsOf,
  pinRef,
  type Wire,
} from "../../job/index.ts";
import { plain, takeOut } from "../diagram/draft.ts";

/** The pins of parts, each part looked at once. */
function pinLookup(parts: readonly Part[]): (ref: string) => boolean {
  const byId = new Map(parts.map((part) => [part.id, part]));
  const pins = new Map<Id, ReadonlySet<string>>();
  return (ref) => {
    const id = ownerOf(ref);
    let known = pins.get(id);
    if (!known) {
      const part = byId.get(id);
      known = new Set(part ? pinIdsOf(part).map((pin) => pinRef(id, pin)) : []);
      pins.set(id, known);
    }
    return known.has(ref);
  };
}

/**
 * Takes out of every machine's changes, and of the links, what speaks of parts, pins and sheets
 * that an edit took away: a file with a wire to nowhere could not be opened again.
 *
 * @param before the job as it was before the edit
 */
export function tidyChanges(draft: Job, before: Job): void {
  const job = plain(draft);
  if (!job.machines.some((machine) => machine.changes?.length)) return;
  const untouched =
    job.diagram === before.diagram &&
    job.links === before.links &&
    job.machines.every((machine, at) => machine.changes === before.machines[at]?.changes);
  if (untouched) return;
  const sheets = new Set(job.diagram.sheets.map(({ id }) => id));
  const offSheet = (part: Part) => !sheets.has(part.sheet);
  if (job.diagram.parts.some(offSheet)) {
    const gone = new Set(job.diagram.parts.filter(offSheet).map(({ id }) => id));
    takeOut(draft.diagram.parts, ({ id }) => gone.has(id));
  }
  const isDrawn = pinLookup(plain(draft).diagram.parts);
  const loose = (wire: Wire) => !isDrawn(wire.from) || !isDrawn(wire.to);
  if (job.diagram.wires.some(loose)) takeOut(draft.diagram.wires, loose);
  const { parts, wires } = plain(draft).diagram;
  const drawn = [...parts, ...wires].map(({ id }) => id);
  const everywhere: Part[] = [...parts];
  for (const [at, machine] of job.machines.entries()) {
    const written = draft.machines[at];
    if (!machine.changes || !written?.changes) continue;
    const added = machine.changes
      .flatMap(({ parts = [] }) => parts)
      .filter((one) => !offSheet(one));
    everywhere.push(...added);
    const hasPin = pinLookup([...parts, ...added]);
    const known = new Set<Id>([
      ...drawn,
      ...added.map(({ id }) => id),
      ...machine.changes.flatMap((one) => (one.wires ?? []).map(({ id }) => id)),
    ]);
    for (const change of written.changes) {
      if (change.parts) takeOut(change.parts, offSheet);
      if (change.wires) takeOut(change.wires, (wire) => !hasPin(wire.from) || !hasPin(wire.to));
      if (change.without) takeOut(change.without, (id) => !known.has(id));
      for (const list of ["parts", "wires", "without"] as const) {
        if (change[list]?.length === 0) delete change[list];
      }
    }
  }
  const isAnywhere = pinLookup(everywhere);
  if (job.links.some((link) => !isAnywhere(link.pin)))
    takeOut(draft.links, (link) => !isAnywhere(link.pin));
}
