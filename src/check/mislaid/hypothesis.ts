import type { Probe } from "../../job/index.ts";
import { cavityRef, type Id } from "../../job/index.ts";
import type { NoteMove } from "../correction.ts";

/** One thing that may have gone wrong between a plug's face and what is written of it. */
export type Mishap =
  | { readonly is: "exchanged"; readonly a: string; readonly b: string }
  | { readonly is: "shifted"; readonly row: readonly string[]; readonly by: 1 | -1 }
  | { readonly is: "mirrored" };

/** A mishap, and for each mark at which something was noted the mark where it really is. */
export interface Hypothesis {
  readonly mishap: Mishap;
  /** A mark that is not in it stays where it is; null: beyond the end of its row, where nothing is. */
  readonly really: ReadonlyMap<string, string | null>;
}

export type Move = Pick<Hypothesis, "really">;

/** As drawn. */
export const NOTHING_MOVED: Move = { really: new Map() };

/** Where a probe really is; null: beyond the end of its row. */
export function reallyAt(plug: Id, { really }: Move, probe: Probe): Probe | null {
  const prefix = `${plug}:`;
  if (!probe.startsWith(prefix)) return probe;
  const mark = really.get(probe.slice(prefix.length));
  return mark === undefined ? probe : mark === null ? null : cavityRef(plug, mark);
}

/** Where what was noted at each mark belongs; what lies beyond the end of a row has no place to go to. */
export const notesMovedBy = ({ really }: Hypothesis): readonly NoteMove[] =>
  [...really].flatMap(([from, to]) => (to === null || to === from ? [] : [{ from, to }]));

/** Wires of the plug that it moves. */
export const movedBy = ({ really }: Hypothesis): number =>
  [...really].filter(([mark, to]) => mark !== to).length;

/** Whether the two say the same of every cavity. */
export function isSameMove(a: Hypothesis, b: Hypothesis): boolean {
  const marks = new Set([...a.really.keys(), ...b.really.keys()]);
  const of = ({ really }: Hypothesis, mark: string) => really.get(mark) ?? mark;
  return [...marks].every(
    (mark) =>
      of(a, mark) === of(b, mark) &&
      (a.really.get(mark) === null) === (b.really.get(mark) === null),
  );
}

/** Whether the second only says the same of more cavities: a row, and the whole plug it is in. */
export function isPartOf(one: Hypothesis, other: Hypothesis): boolean {
  if (one === other) return true;
  if (one.mishap.is !== "shifted" || other.mishap.is !== "shifted") return false;
  // the marks of a row may run against, or across, those of the plug
  return [...one.really].every(([mark, to]) => to === null || other.really.get(mark) === to);
}
