import {
  type CavityRef,
  cavityRef,
  type Id,
  type Job,
  type Machine,
  type MachineWire,
  type Plug,
} from "../job/index.ts";
import { edgeOf, keyOn, outlineAround } from "../plug/index.ts";
import { rewriteSetAside } from "./diagram/every-ref.ts";
import { forgetThings } from "./forget.ts";

/**
 * Changes of plugs as functions over a draft of the job, for use inside one `session.edit`.
 * A cavity is named by its place in the plug's list, because a faulty job may hold one mark twice.
 */
export interface CavityPlace {
  readonly plug: Id;
  readonly index: number;
}

/** What can be said of the wire in one cavity on one machine; `null` takes it back. */
export type MachineWireChange = {
  readonly [K in keyof Omit<MachineWire, "cavity">]?: MachineWire[K] | null;
};

function plugIn(draft: Job, id: Id): Plug {
  const plug = draft.plugs.find((one) => one.id === id);
  if (!plug) throw new Error(`no such plug: ${id}`);
  return plug;
}

function cavityIn(draft: Job, { plug, index }: CavityPlace) {
  const cavity = plugIn(draft, plug).cavities[index];
  if (!cavity) throw new Error(`no cavity at ${index} of plug ${plug}`);
  return cavity;
}

/** The place of the first cavity with the reference's mark; null when there is none. */
export function placeOf(job: Job, ref: CavityRef): CavityPlace | null {
  for (const plug of job.plugs) {
    const index = plug.cavities.findIndex((cavity) => cavityRef(plug.id, cavity.mark) === ref);
    if (index >= 0) return { plug: plug.id, index };
  }
  return null;
}

/** Leaves the fields out that are not true, so that a plain cavity stays plain in the file. */
export function setCavityState(
  draft: Job,
  place: CavityPlace,
  state: "plain" | "empty" | "blocked",
): void {
  const cavity = cavityIn(draft, place);
  delete cavity.empty;
  delete cavity.blocked;
  if (state === "empty") cavity.empty = true;
  if (state === "blocked") cavity.blocked = true;
}

export function moveCavity(draft: Job, place: CavityPlace, at: readonly [number, number]): void {
  cavityIn(draft, place).at = [at[0], at[1]];
}

export function addCavity(
  draft: Job,
  plug: Id,
  mark: string,
  at: readonly [number, number],
): CavityRef {
  plugIn(draft, plug).cavities.push({ mark, at: [at[0], at[1]] });
  return cavityRef(plug, mark);
}

/**
 * Gives a cavity another mark; links, machine wires, readings and stand-ins go with it. Where a
 * second cavity carries the old mark they stay with that one: which was meant cannot be told.
 */
export function renameMark(draft: Job, place: CavityPlace, mark: string): void {
  const cavity = cavityIn(draft, place);
  const from = cavityRef(place.plug, cavity.mark);
  cavity.mark = mark;
  if (hasCavity(draft, from)) return;
  renameRef(draft, from, cavityRef(place.plug, mark));
}

function renameRef(draft: Job, from: CavityRef, to: CavityRef): void {
  for (const link of draft.links) if (link.cavity === from) link.cavity = to;
  for (const machine of draft.machines) {
    for (const wire of machine.wires) if (wire.cavity === from) wire.cavity = to;
    for (const reading of machine.readings) {
      if (reading.red === from) reading.red = to;
      if (reading.black === from) reading.black = to;
    }
  }
  for (const standIn of draft.standIns ?? []) {
    for (const entry of standIn.map) if (entry.cavity === from) entry.cavity = to;
  }
  rewriteSetAside(draft, (ref) => (ref === from ? to : ref));
}

/**
 * Takes a cavity away with its links, its wires on every machine and its place in stand-ins.
 * Readings taken there stay: a measured value is evidence and is never thrown away unasked.
 */
export function deleteCavity(draft: Job, place: CavityPlace): void {
  const { mark } = cavityIn(draft, place);
  plugIn(draft, place.plug).cavities.splice(place.index, 1);
  dropMissing(draft, [cavityRef(place.plug, mark)]);
}

/** Takes the plug away with all that hangs on its cavities, as `deleteCavity` does. */
export function deletePlug(draft: Job, plug: Id): void {
  const refs = plugIn(draft, plug).cavities.map((cavity) => cavityRef(plug, cavity.mark));
  draft.plugs = draft.plugs.filter((one) => one.id !== plug);
  dropMissing(draft, refs);
}

/**
 * Draws a plug anew. A mark that stays keeps its link, its wires and whether it is empty or
 * blocked; what hung on a mark that is gone goes with it.
 */
export function redrawPlug(draft: Job, id: Id, drawn: Omit<Plug, "id">): void {
  const plug = plugIn(draft, id);
  const before = new Map(plug.cavities.map((cavity) => [cavity.mark, cavity]));
  const refs = [...before.keys()].map((mark) => cavityRef(id, mark));
  const cavities = drawn.cavities.map((cavity) => {
    const old = before.get(cavity.mark);
    if (!old) return cavity;
    const { opening: _, ...kept } = old;
    return { ...kept, ...cavity };
  });
  // What is not said of the new drawing does not hold of it: a photo would no longer lie behind it.
  for (const field of ["name", "holds", "photo", "neutral"] as const) delete plug[field];
  Object.assign(plug, drawn, { cavities });
  dropMissing(draft, refs);
}

/** Draws the housing anew around the cavities as they lie now; latch and keys stay at their edges. */
export function rehousePlug(draft: Job, id: Id): void {
  const plug = plugIn(draft, id);
  const before = plug.outline ?? outlineAround(plug.cavities, "rectangle");
  const after = outlineAround(plug.cavities, before.shape === "circle" ? "circle" : "rectangle");
  plug.keys = plug.keys?.map((key) => keyOn(after, key.kind, edgeOf(before, key)));
  plug.outline = after;
}

/** Draws a plug anew on its photo; a housing that it had goes round the cavities as they lie there. */
export function redrawOnPhoto(draft: Job, id: Id, drawn: Omit<Plug, "id">): void {
  redrawPlug(draft, id, drawn);
  if (plugIn(draft, id).outline) rehousePlug(draft, id);
}

/** Takes the photo away from behind the cavities, which stay where they are. */
export function removePhoto(draft: Job, id: Id): void {
  delete plugIn(draft, id).photo;
}

/** Notes that somebody held the neutral drawing against the plug and found it right. */
export function confirmPlaces(draft: Job, id: Id): void {
  delete plugIn(draft, id).neutral;
}

/** How many links and machine wires would go if `marks` were all that is left of the plug. */
export function lossOfMarks(job: Job, plug: Id, marks: readonly string[]): number {
  const kept = new Set(marks.map((mark) => cavityRef(plug, mark)));
  const goes = ({ cavity }: { cavity: CavityRef }) =>
    cavity.startsWith(`${plug}:`) && !kept.has(cavity);
  return (
    job.links.filter(goes).length +
    job.machines.reduce((sum, machine) => sum + machine.wires.filter(goes).length, 0)
  );
}

function hasCavity(draft: Job, ref: CavityRef): boolean {
  return placeOf(draft, ref) !== null;
}

function dropMissing(draft: Job, refs: readonly CavityRef[]): void {
  const gone = new Set(refs.filter((ref) => !hasCavity(draft, ref)));
  if (gone.size === 0) return;
  const stays = (thing: { cavity: CavityRef }) => !gone.has(thing.cavity);
  draft.links = draft.links.filter(stays);
  for (const machine of draft.machines) machine.wires = machine.wires.filter(stays);
  for (const standIn of draft.standIns ?? []) standIn.map = standIn.map.filter(stays);
  forgetThings(draft, (ref) => gone.has(ref));
}

/** Notes what the wire in a cavity looks like on one machine; an entry left with nothing goes. */
export function setMachineWire(
  draft: Job,
  machineId: Id,
  cavity: CavityRef,
  change: MachineWireChange,
): void {
  const machine = draft.machines.find((one) => one.id === machineId);
  if (!machine) throw new Error(`no such machine: ${machineId}`);
  const wire = entryFor(machine, cavity);
  for (const [field, value] of Object.entries(change)) {
    if (value === null || value === undefined) delete wire[field as keyof MachineWire];
    else Object.assign(wire, { [field]: value });
  }
  if (Object.keys(wire).length === 1) {
    machine.wires = machine.wires.filter((one) => one.cavity !== cavity);
  }
}

function entryFor(machine: Machine, cavity: CavityRef): MachineWire {
  const known = machine.wires.find((wire) => wire.cavity === cavity);
  if (known) return known;
  machine.wires.push({ cavity });
  // Read back, so that inside a draft the entry returned is the draft's own.
  return machine.wires.at(-1) ?? { cavity };
}
