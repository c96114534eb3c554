import type { Id, Job, Part, Wire } from "../../job/index.ts";
import { plain, takeOut } from "../diagram/draft.ts";
import type { Change } from "./drawn-job.ts";
import type { Recording } from "./recording.ts";

/** The diagram as the home of a part or wire; any other number is a place in the list of changes. */
export const DIAGRAM = -1;

/** Which change of a machine each part and wire came with; those of the diagram are not named. */
export function homesOf(changes: readonly Change[]): ReadonlyMap<Id, number> {
  const homes = new Map<Id, number>();
  changes.forEach(({ parts = [], wires = [] }, index) => {
    for (const { id } of [...parts, ...wires]) homes.set(id, index);
  });
  return homes;
}

interface Things<T> {
  put(id: Id, thing: T): void;
  /** Takes it out once `finish` is called. */
  take(id: Id): void;
  add(thing: T): void;
}

/** The lists of the diagram and of the machine's changes, to write to. */
export function listsOf(draft: Job, machine: Id, recording: Recording | null) {
  const changeAt = (index: number): Change => {
    const own = draft.machines.find(({ id }) => id === machine);
    if (!own) throw new Error(`no machine ${machine}`);
    own.changes ??= [];
    if (index === own.changes.length) own.changes.push({ note: recording?.note ?? "" });
    const change = own.changes[index];
    if (!change) throw new Error(`no change ${index} of ${machine}`);
    return change;
  };
  const finishers: (() => void)[] = [];
  const open = <T extends { id: Id }>(list: () => T[] | undefined, make: () => T[]): Things<T> => {
    const gone = new Set<Id>();
    let places: ReadonlyMap<Id, number> | null = null;
    finishers.push(() => {
      const written = list();
      if (written && gone.size > 0) takeOut(written, ({ id }) => gone.has(id));
    });
    return {
      put(id, thing) {
        places ??= new Map(plain(list() ?? []).map((one, index) => [one.id, index]));
        const index = places.get(id);
        const written = list();
        if (written && index !== undefined) written[index] = thing;
      },
      take: (id) => gone.add(id),
      add: (thing) => make().push(thing),
    };
  };
  const byHome = <T extends { id: Id }>(
    ofDiagram: () => T[],
    ofChange: (change: Change) => T[] | undefined,
    begun: (change: Change) => T[],
  ) => {
    const opened = new Map<number, Things<T>>();
    return (home: number): Things<T> => {
      const found =
        opened.get(home) ??
        (home === DIAGRAM
          ? open(ofDiagram, ofDiagram)
          : open(
              () => ofChange(changeAt(home)),
              () => begun(changeAt(home)),
            ));
      opened.set(home, found);
      return found;
    };
  };
  return {
    parts: byHome<Part>(
      () => draft.diagram.parts,
      ({ parts }) => parts,
      (change) => {
        change.parts ??= [];
        return change.parts;
      },
    ),
    wires: byHome<Wire>(
      () => draft.diagram.wires,
      ({ wires }) => wires,
      (change) => {
        change.wires ??= [];
        return change.wires;
      },
    ),
    leaveOut(home: number, id: Id) {
      const change = changeAt(home);
      change.without ??= [];
      if (!plain(change.without).includes(id)) change.without.push(id);
    },
    /** Takes out what was to go. Nothing may be put after that. */
    finish() {
      for (const finish of finishers) finish();
    },
  };
}
