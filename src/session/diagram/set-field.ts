import { pinsOf } from "../../circuit/index.ts";
import { type Id, type Job, type PinId, pinRef, splitRef } from "../../job/index.ts";
import { draftPart, draftWire, plain, takeOut } from "./draft.ts";
import { withWiresFollowing } from "./follow.ts";
import { removeWiresOn } from "./remove.ts";

/**
 * Makes `change` to one part. Wires follow pins that move; wires and links on pins that are no
 * more go with them.
 */
export function changePart(draft: Job, id: Id, change: () => void): void {
  withWiresFollowing(draft, new Set([id]), change, (corner) => corner);
  const part = plain(draft).diagram.parts.find((one) => one.id === id);
  if (!part) return;
  const there = new Set<PinId>(pinsOf(part).map((pin) => pin.id));
  const lost = (ref: string) => {
    const { owner, name } = splitRef(ref);
    return owner === id && !there.has(name);
  };
  removeWiresOn(draft, lost);
  takeOut(draft.links, (link) => lost(link.pin));
}

/** Sets a field of a part by name; `undefined` takes it away, so that the usual value holds again. */
export function setPartField(draft: Job, id: Id, field: string, value: unknown): void {
  changePart(draft, id, () => {
    const part = draftPart(draft, id) as Record<string, unknown> | null;
    if (!part) return;
    if (value === undefined) delete part[field];
    else if (part[field] !== value) part[field] = value;
  });
}

/** Adds a pin with the next free number to an inline plug. */
export function addInlinePin(draft: Job, id: Id, pin: PinId): void {
  changePart(draft, id, () => {
    const part = draftPart(draft, id);
    if (part?.kind === "inline") part.pins.push({ id: pin });
  });
}

/** Takes a pin of an inline plug out, with the wires on it. */
export function removeInlinePin(draft: Job, id: Id, pin: PinId): void {
  removeWiresOn(draft, (ref) => ref === pinRef(id, pin));
  changePart(draft, id, () => {
    const part = draftPart(draft, id);
    if (part?.kind === "inline") takeOut(part.pins, (one) => one.id === pin);
  });
}

/** Sets a number of a wire; `undefined` takes it away. */
export function setWireField(
  draft: Job,
  id: Id,
  field: "mm2" | "metres" | "awg",
  value: number | undefined,
): void {
  const wire = draftWire(draft, id);
  if (!wire) return;
  if (value === undefined) delete wire[field];
  else wire[field] = value;
}
