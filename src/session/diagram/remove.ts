import { type Id, type Job, type PinRef, pinRef, splitRef, type Wire } from "../../job/index.ts";
import { forgetThings } from "../forget.ts";
import { draftWire, plain, takeOut } from "./draft.ts";
import { withoutIdleCorners } from "./polyline.ts";
import { pointsOfWire, setPath } from "./split-wire.ts";

/** Takes out every wire with an end that `on` names, and tidies what is left at the other ends. */
export function removeWiresOn(draft: Job, on: (ref: PinRef) => boolean): void {
  const gone = plain(draft).diagram.wires.filter((wire) => on(wire.from) || on(wire.to));
  removeWires(draft, new Set(gone.map((wire) => wire.id)));
}

/** Takes out wires; splices and untraced ends that they leave without a purpose go with them. */
export function removeWires(draft: Job, ids: ReadonlySet<Id>): void {
  if (ids.size === 0) return;
  const before = plain(draft).diagram;
  const there = new Set(before.parts.map((part) => part.id));
  const ends = new Set<Id>();
  for (const wire of before.wires) {
    if (!ids.has(wire.id)) continue;
    for (const ref of [wire.from, wire.to]) ends.add(splitRef(ref).owner);
  }
  takeOut(draft.diagram.wires, (wire) => ids.has(wire.id));
  for (const id of ends) if (there.has(id)) tidyEnd(draft, id);
}

/** The same for a part that one wire's end was taken away from. */
export function tidyLeft(draft: Job, id: Id): void {
  if (plain(draft).diagram.parts.some((part) => part.id === id)) tidyEnd(draft, id);
}

/** Takes out an idle splice or nameless untraced end, and joins two like wires at a splice to one. */
function tidyEnd(draft: Job, id: Id): void {
  const job = plain(draft);
  const part = job.diagram.parts.find((one) => one.id === id);
  const wires = job.diagram.wires.filter(
    (wire) => splitRef(wire.from).owner === id || splitRef(wire.to).owner === id,
  );
  const idle =
    wires.length === 0 &&
    (part?.kind === "splice" || (part?.kind === "offpage" && !part.label && !part.is));
  if (idle) removeParts(draft, new Set([id]));
  else if (part?.kind === "splice" && !part.label && wires.length === 2) joinAt(draft, id, wires);
}

function joinAt(draft: Job, id: Id, [one, two]: readonly Wire[]): void {
  if (!one || !two || !alike(one, two)) return;
  const job = plain(draft);
  const splice = pinRef(id, "1");
  const ordered = (wire: Wire, startsHere: boolean) => {
    const points = pointsOfWire(job, wire) ?? [];
    return (wire.from === splice) === startsHere ? points : points.reverse();
  };
  const head = ordered(one, false);
  const tail = ordered(two, true);
  const run = [...head, ...tail.slice(1)];
  const [from, to] = [
    one.from === splice ? one.to : one.from,
    two.from === splice ? two.to : two.from,
  ];
  const first = run[0];
  const last = run.at(-1);
  const kept = draftWire(draft, one.id);
  if (!kept || !first || !last || from === to) return;
  kept.from = from;
  kept.to = to;
  setPath(kept, withoutIdleCorners(first, run.slice(1, -1), last));
  if (one.metres !== undefined && two.metres !== undefined) kept.metres = one.metres + two.metres;
  takeOut(draft.diagram.wires, (wire) => wire.id === two.id);
  removeParts(draft, new Set([id]));
}

/** True when nothing tells that the two were different wires. */
function alike(a: Wire, b: Wire): boolean {
  return (
    a.number === b.number &&
    a.mm2 === b.mm2 &&
    a.awg === b.awg &&
    a.colour?.base === b.colour?.base &&
    a.colour?.tracer === b.colour?.tracer &&
    (a.metres === undefined) === (b.metres === undefined)
  );
}

function removeParts(draft: Job, ids: ReadonlySet<Id>): void {
  takeOut(draft.diagram.parts, (part) => ids.has(part.id));
  takeOut(draft.links, (link) => ids.has(splitRef(link.pin).owner));
  forgetThings(draft, (ref) => ids.has(ref));
}

/** Takes out parts and wires by id, with the wires and links on those parts. */
export function removeThings(draft: Job, ids: readonly string[]): void {
  const gone = new Set(ids);
  const parts = plain(draft).diagram.parts.filter((part) => gone.has(part.id));
  const held = new Set(parts.map((part) => part.id));
  const wires = plain(draft).diagram.wires.filter(
    (wire) =>
      gone.has(wire.id) || held.has(splitRef(wire.from).owner) || held.has(splitRef(wire.to).owner),
  );
  // The parts go first: a splice among them is no longer there to be tidied.
  removeParts(draft, held);
  removeWires(draft, new Set(wires.map((wire) => wire.id)));
}

/** Takes out a sheet with everything drawn on it. */
export function removeSheet(draft: Job, id: Id): void {
  const parts = plain(draft).diagram.parts.filter((part) => part.sheet === id);
  removeThings(
    draft,
    parts.map((part) => part.id),
  );
  takeOut(draft.diagram.sheets, (sheet) => sheet.id === id);
}
