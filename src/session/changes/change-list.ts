import { circuitOf } from "../../circuit/index.ts";
import { type Id, type Job, ownerOf, type Part, type Wire } from "../../job/index.ts";
import { changesOf } from "./drawn-job.ts";
import { perDrawing } from "./per-drawing.ts";

/** How one machine's circuit differs from the diagram, for drawing. */
export interface ChangesDrawn {
  /** Parts and wires of the circuit that are not the diagram's. */
  readonly added: ReadonlySet<Id>;
  /** Parts that the machine is without. */
  readonly goneParts: ReadonlySet<Id>;
  /** All that was ever there with only the wires that the machine is without: a scene of ghosts. */
  readonly ghosts: Job["diagram"];
}

/** Null where the machine is as the diagram says. The same object for the same drawing. */
export const changesDrawn = perDrawing((job: Job, machine: Id): ChangesDrawn | null => {
  const changes = changesOf(job, machine);
  if (changes.length === 0) return null;
  const { diagram } = job;
  const circuit = circuitOf(job, machine);
  const isPart = new Set(circuit.parts.map(({ id }) => id));
  const isWire = new Set(circuit.wires.map(({ id }) => id));
  const own = new Set([...diagram.parts, ...diagram.wires].map(({ id }) => id));
  const parts: Part[] = [...diagram.parts, ...changes.flatMap((one) => one.parts ?? [])];
  const wires: Wire[] = [...diagram.wires, ...changes.flatMap((one) => one.wires ?? [])];
  return {
    added: new Set([...isPart, ...isWire].filter((id) => !own.has(id))),
    goneParts: new Set(parts.filter(({ id }) => !isPart.has(id)).map(({ id }) => id)),
    ghosts: { ...diagram, parts, wires: wires.filter(({ id }) => !isWire.has(id)) },
  };
});

/** One change as the list of them shows it. */
export interface ChangeRow {
  readonly note: string;
  /** Ids of the parts that it added, joints left away, and how many wires. */
  readonly parts: readonly Id[];
  readonly wires: number;
  /** Ids of what it left out; wires that only went with a part are not named. */
  readonly leftOut: readonly Id[];
  /** Ids to go to when the change is looked for, on the board. */
  readonly refs: readonly Id[];
}

/** The changes of one machine, in the order in which they were done. */
export function changeRows(job: Job, machine: Id): readonly ChangeRow[] {
  const wireById = new Map(job.diagram.wires.map((wire) => [wire.id, wire]));
  const present = drawnIds(job, machine);
  return changesOf(job, machine).map(({ note, parts = [], wires = [], without = [] }) => {
    const added = [...parts, ...wires].map(({ id }) => id);
    // What is gone is not on the board: the parts that its wires ended on are.
    const around = without.flatMap((id) => {
      const wire = wireById.get(id);
      if (wire) return [ownerOf(wire.from), ownerOf(wire.to)];
      const held = job.diagram.wires.filter(
        ({ from, to }) => ownerOf(from) === id || ownerOf(to) === id,
      );
      return held.flatMap(({ from, to }) => [ownerOf(from), ownerOf(to)]);
    });
    const refs = added.some((id) => present.has(id)) ? added : around;
    return {
      note,
      parts: parts.flatMap(({ id, kind }) => (kind === "splice" ? [] : [id])),
      wires: wires.length,
      leftOut: without,
      refs: refs.filter((id) => present.has(id)),
    };
  });
}

function drawnIds(job: Job, machine: Id): ReadonlySet<Id> {
  const { parts, wires } = circuitOf(job, machine);
  return new Set([...parts, ...wires].map(({ id }) => id));
}
