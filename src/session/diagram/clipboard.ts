import { add, boundsOf, type Point } from "../../base/index.ts";
import { kindOf } from "../../circuit/index.ts";
import { type Id, type Job, type Part, pinRef, splitRef, type Wire } from "../../job/index.ts";
import { idSource, plain } from "./draft.ts";

/** Parts and the wires between them, taken out of a diagram. */
export interface Clip {
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
  /** Middle of the parts, pixels of the sheet they were copied from. */
  readonly middle: Point;
}

/** The chosen parts and every wire that runs between two of them; null when no part is chosen. */
export function clipOf(job: Job, ids: readonly string[]): Clip | null {
  const chosen = new Set(ids);
  const parts = job.diagram.parts.filter((part) => chosen.has(part.id));
  const box = boundsOf(parts.map((part) => part.at));
  if (!box) return null;
  const wires = job.diagram.wires.filter(
    (wire) => chosen.has(splitRef(wire.from).owner) && chosen.has(splitRef(wire.to).owner),
  );
  return { parts, wires, middle: [(box.left + box.right) / 2, (box.top + box.bottom) / 2] };
}

/** Adds a clip to a sheet, moved by `by`, under fresh ids. Returns the ids of the new parts and wires. */
export function pasteClip(draft: Job, clip: Clip, sheet: Id, by: Point): Id[] {
  const nextId = idSource(draft);
  const names = new Map<Id, Id>();
  for (const part of clip.parts) {
    const id = nextId(kindOf(part.kind).letter);
    names.set(part.id, id);
    const at = add(part.at, by);
    draft.diagram.parts.push({ ...structuredClone(part), id, sheet, at: [at[0], at[1]] });
  }
  const renamed = (ref: string) => {
    const { owner, name } = splitRef(ref);
    return pinRef(names.get(owner) ?? owner, name);
  };
  const wires = clip.wires.map((wire): Wire => {
    const copy: Wire = {
      ...structuredClone(wire),
      id: nextId("W"),
      from: renamed(wire.from),
      to: renamed(wire.to),
    };
    if (wire.path) {
      copy.path = wire.path.map((corner): [number, number] => {
        const [x, y] = add(corner, by);
        return [x, y];
      });
    }
    return copy;
  });
  draft.diagram.wires.push(...wires);
  return [...names.values(), ...wires.map((wire) => wire.id)];
}

let held: Clip | null = null;

/** The clip last copied in this window; null before the first. */
export const heldClip = (): Clip | null => held;

export function holdClip(clip: Clip): void {
  held = structuredClone(plain(clip));
}
