import type { Patch } from "immer";
import { type Id, type Part, type PinRef, pinIdsOf, pinRef, type Wire } from "../../job/index.ts";

/** What an edit did to a list of things with ids. */
export interface Difference<T> {
  readonly gone: readonly T[];
  readonly fresh: readonly T[];
  /** A new id counts as a change of the same thing. */
  readonly changed: readonly { readonly before: T; readonly after: T }[];
}

/**
 * The ids that patches wrote over others, new id to old, of one list of the diagram. A thing taken
 * out and another put in is no renaming, though it may stand in the same place.
 */
export function renamesIn(
  patches: readonly Patch[],
  list: "parts" | "wires",
  before: readonly { readonly id: Id }[],
): ReadonlyMap<Id, Id> {
  const renames = new Map<Id, Id>();
  for (const { path, value } of patches) {
    const [, name, index, field] = path;
    const old = name === list && field === "id" ? before[Number(index)]?.id : undefined;
    if (old !== undefined && path.length === 4) renames.set(value, old);
  }
  return renames;
}

/** Compares two states of a list. `renames`: new id to old. */
export function differenceOf<T extends { readonly id: Id }>(
  before: readonly T[],
  after: readonly T[],
  renames: ReadonlyMap<Id, Id>,
): Difference<T> {
  if (before === after) return { gone: [], fresh: [], changed: [] };
  const was = new Map(before.map((thing) => [thing.id, thing]));
  const kept = new Set<Id>();
  const fresh: T[] = [];
  const changed: { before: T; after: T }[] = [];
  for (const thing of after) {
    const old = was.get(renames.get(thing.id) ?? thing.id);
    if (!old) fresh.push(thing);
    else {
      kept.add(old.id);
      if (old !== thing) changed.push({ before: old, after: thing });
    }
  }
  return { gone: before.filter(({ id }) => !kept.has(id)), fresh, changed };
}

const without = (thing: object, names: readonly string[]): string =>
  JSON.stringify(
    Object.entries(thing)
      .filter(([name]) => !names.includes(name))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

const PLACED = ["id", "at", "turn", "unit", "size"];

/** True when only where and how large it is drawn differs, or its id. */
export function onlyPlaced(before: Part, after: Part): boolean {
  const bare = (part: Part) => {
    if (part.kind !== "module") return without(part, PLACED);
    const pins = part.pins.map(({ at: _at, ...pin }) => pin);
    return without({ ...part, pins }, PLACED);
  };
  return bare(before) === bare(after);
}

/** True when only its corners differ. */
export const onlyRouted = (before: Wire, after: Wire): boolean =>
  without(before, ["path"]) === without(after, ["path"]);

/** References to pins under their new names, by the old ones: parts and pins that were renamed. */
export function renamedPins(
  changed: readonly { readonly before: Part; readonly after: Part }[],
): ReadonlyMap<PinRef, PinRef> {
  const renamed = new Map<PinRef, PinRef>();
  for (const { before, after } of changed) {
    const [was, is] = [pinIdsOf(before), pinIdsOf(after)];
    // Another count of pins is no renaming: some were added or taken out.
    const sameCount = was.length === is.length;
    for (const [index, pin] of was.entries()) {
      const now = sameCount ? is[index] : pin;
      const old = pinRef(before.id, pin);
      const next = now === undefined ? old : pinRef(after.id, now);
      if (old !== next) renamed.set(old, next);
    }
  }
  return renamed;
}

/** A wire as it was but for new names of what it ends on. */
export function rejoined(wire: Wire, renamed: ReadonlyMap<PinRef, PinRef>): Wire {
  const from = renamed.get(wire.from) ?? wire.from;
  const to = renamed.get(wire.to) ?? wire.to;
  return from === wire.from && to === wire.to ? wire : { ...wire, from, to };
}
