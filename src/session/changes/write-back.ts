import type { Patch } from "immer";
import {
  freeId,
  type Id,
  idsOf,
  type Job,
  ownerOf,
  type Part,
  type PinRef,
  type Wire,
} from "../../job/index.ts";
import { plain } from "../diagram/draft.ts";
import {
  differenceOf,
  onlyPlaced,
  onlyRouted,
  rejoined,
  renamedPins,
  renamesIn,
} from "./drawing-difference.ts";
import { changesOf } from "./drawn-job.ts";
import { DIAGRAM, homesOf, listsOf } from "./homes.ts";
import type { Recording } from "./recording.ts";

/** Why an edit can't be made; its message is one sentence for the user. */
export class DrawingRefusal extends Error {}

interface Drawing {
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
}

/**
 * Takes what an edit did to one machine's circuit to where each thing belongs: what was drawn with
 * the diagram back into the diagram, what came with a change into that change. While a change is
 * being recorded all that is new or gone is the change's; where things are drawn is the diagram's
 * all the same.
 *
 * @param draft the job, to be written to
 * @param shown the machine's circuit before the edit, `next` after it, `patches` from one to the other
 * @throws {DrawingRefusal} while recording, for what is the same on every machine
 */
export function writeBack(
  draft: Job,
  machine: Id,
  recording: Recording | null,
  shown: Drawing,
  next: Drawing,
  patches: readonly Patch[],
): void {
  const parts = differenceOf(shown.parts, next.parts, renamesIn(patches, "parts", shown.parts));
  const wires = differenceOf(shown.wires, next.wires, renamesIn(patches, "wires", shown.wires));
  const before = plain(draft);
  const homes = homesOf(changesOf(before, machine));
  const into = recording?.change ?? DIAGRAM;
  const homeOf = (id: Id) => homes.get(id) ?? DIAGRAM;

  const newIds = new Map(
    parts.changed.flatMap(({ before: was, after }) =>
      was.id === after.id ? [] : [[was.id, after.id] as const],
    ),
  );
  const renamed = renamedPins(parts.changed);
  const moved = new Set<Wire>(
    wires.changed.flatMap(({ before: was, after }) => {
      const { from, to } = rejoined(was, renamed);
      return from === after.from && to === after.to ? [] : [after];
    }),
  );
  if (recording) {
    for (const { before: was, after } of parts.changed) {
      if (homeOf(was.id) === DIAGRAM && !onlyPlaced(was, after)) refuse(was.id);
    }
    for (const { before: was, after } of wires.changed) {
      const routed = moved.has(after) || onlyRouted(rejoined(was, renamed), after);
      if (homeOf(was.id) === DIAGRAM && !routed) refuse(was.id);
    }
  }

  const { partTo, wireTo } = destinations();
  const lists = listsOf(draft, machine, recording);
  // What stays in its list first: the places of its members still hold.
  for (const { before: was, after } of parts.changed)
    lists.parts(homeOf(was.id)).put(was.id, after);
  const leaving: { wire: Wire; was: Id; home: number; to: number }[] = [];
  for (const { before: was, after } of wires.changed) {
    const home = homeOf(was.id);
    const to = wireTo.get(after) ?? home;
    if (to === home) lists.wires(home).put(was.id, after);
    else leaving.push({ wire: after, was: was.id, home, to });
  }
  // The diagram's own wire stays in the diagram; this machine has another one in its place.
  const used = new Set([...idsOf(before), ...next.wires.map(({ id }) => id)]);
  const added: { wire: Wire; to: number }[] = wires.fresh.map((wire) => ({
    wire,
    to: wireTo.get(wire) ?? into,
  }));
  for (const { wire, was, home, to } of leaving) {
    if (home === DIAGRAM) {
      lists.leaveOut(to, was);
      const id = freeId(used, "W");
      used.add(id);
      added.push({ wire: { ...wire, id }, to });
    } else {
      lists.wires(home).take(was);
      added.push({ wire, to });
    }
  }
  const goneParts = new Set(parts.gone.map(({ id }) => id));
  for (const { id } of parts.gone) {
    if (homeOf(id) < into) lists.leaveOut(into, id);
    else lists.parts(homeOf(id)).take(id);
  }
  for (const { id, from, to } of wires.gone) {
    if (homeOf(id) >= into) lists.wires(homeOf(id)).take(id);
    // A wire of a part that went goes with it, unsaid.
    else if (!goneParts.has(ownerOf(from)) && !goneParts.has(ownerOf(to))) lists.leaveOut(into, id);
  }
  lists.finish();
  rejoinUnseen(draft, shown, renamed);
  for (const part of parts.fresh) lists.parts(partTo.get(part.id) ?? into).add(part);
  for (const { wire, to } of added) lists.wires(to).add(wire);

  /** A wire needs the change that its ends came with, and a new joint the one of its wires. */
  function destinations() {
    const oldIds = new Map([...newIds].map(([old, id]) => [id, old]));
    const fresh = new Set(parts.fresh.map(({ id }) => id));
    const toOfPart = new Map<Id, number>();
    const toOfWire = new Map<Wire, number>();
    const loose = [...wires.fresh, ...moved];
    const endsOf = (wire: Wire) => [ownerOf(wire.from), ownerOf(wire.to)];
    const wasOf = new Map(wires.changed.map(({ before: was, after }) => [after, was.id]));
    for (const wire of loose) {
      const was = wasOf.get(wire);
      toOfWire.set(wire, Math.max(into, was === undefined ? DIAGRAM : homeOf(was)));
    }
    for (const id of fresh) toOfPart.set(id, into);
    for (let settled = false; !settled; ) {
      settled = true;
      for (const wire of loose) {
        const ends = endsOf(wire).map((id) => toOfPart.get(id) ?? homeOf(oldIds.get(id) ?? id));
        const to = Math.max(toOfWire.get(wire) ?? DIAGRAM, ...ends);
        if (to === toOfWire.get(wire)) continue;
        toOfWire.set(wire, to);
        settled = false;
      }
      for (const wire of loose) {
        const to = toOfWire.get(wire) ?? DIAGRAM;
        for (const id of endsOf(wire)) {
          if (!fresh.has(id) || (toOfPart.get(id) ?? DIAGRAM) >= to) continue;
          toOfPart.set(id, to);
          settled = false;
        }
      }
    }
    return { partTo: toOfPart, wireTo: toOfWire };
  }
}

/** What this machine is without has its ends under new names all the same. */
function rejoinUnseen(draft: Job, shown: Drawing, renamed: ReadonlyMap<PinRef, PinRef>): void {
  if (renamed.size === 0) return;
  const seen = new Set(shown.wires.map(({ id }) => id));
  plain(draft).diagram.wires.forEach((wire, index) => {
    const now = seen.has(wire.id) ? wire : rejoined(wire, renamed);
    if (now !== wire) draft.diagram.wires[index] = now;
  });
}

function refuse(id: Id): never {
  throw new DrawingRefusal(
    `${id} is the same on every machine: replace it on this machine, or go back to the diagram to change it.`,
  );
}
