import { kindOf } from "../../circuit/index.ts";
import { type Id, type Job, ownerOf, pinRef, splitRef, type Wire } from "../../job/index.ts";
import { idSource, plain, takeOut } from "../diagram/draft.ts";

/**
 * Puts a like part or wire in the place of one, joined as that was, under a free id. Returns the
 * new id; null when there is nothing of that id. While a change is recorded, this is how one
 * machine comes to have another fuse or another wire than the diagram says.
 */
export function replaceThing(draft: Job, id: Id): Id | null {
  const { parts, wires } = plain(draft).diagram;
  const nextId = idSource(draft);
  const wire = wires.find((one) => one.id === id);
  if (wire) {
    const fresh = nextId("W");
    takeOut(draft.diagram.wires, (one) => one.id === id);
    draft.diagram.wires.push({ ...structuredClone(wire), id: fresh });
    return fresh;
  }
  const part = parts.find((one) => one.id === id);
  if (!part) return null;
  const fresh = nextId(kindOf(part.kind).letter);
  const held = wires.filter(({ from, to }) => ownerOf(from) === id || ownerOf(to) === id);
  const onto = (ref: string) => (ownerOf(ref) === id ? pinRef(fresh, splitRef(ref).name) : ref);
  const gone = new Set(held.map((one) => one.id));
  takeOut(draft.diagram.parts, (one) => one.id === id);
  takeOut(draft.diagram.wires, (one) => gone.has(one.id));
  draft.diagram.parts.push({ ...structuredClone(part), id: fresh });
  draft.diagram.wires.push(
    ...held.map(
      (one): Wire => ({
        ...structuredClone(one),
        id: nextId("W"),
        from: onto(one.from),
        to: onto(one.to),
      }),
    ),
  );
  return fresh;
}
