import type { Box } from "../../base/index.ts";
import type { Id } from "../../job/index.ts";
import { drawnOf } from "../changes/index.ts";
import type { Session } from "../session.ts";
import { layNets } from "./net-edit.ts";
import type { TracedLines } from "./traced-lines.ts";
import type { WholeNet } from "./whole-net.ts";

/** How many of each were drawn; `ends`: untraced ends, where nothing is placed. */
export interface NetsDrawn {
  readonly wires: number;
  readonly splices: number;
  readonly ends: number;
}

/** Draws what a sheet lacks of these nets, as one edit; what it adds is noted in `made`. Null where that was refused. */
export function drawNets(
  session: Session,
  sheet: Id,
  nets: readonly WholeNet[],
  words: readonly Box[],
  made: TracedLines["made"],
  label: string,
): NetsDrawn | null {
  const { job } = session.get();
  const madeThen = made.get();
  let laid: ReturnType<typeof layNets> = { wires: [], parts: [] };
  session.edit(label, (draft) => {
    laid = layNets(draft, sheet, nets, words);
    // Noted before the edit is told to anybody, who would take it for somebody else's.
    made.set(new Set([...madeThen, ...laid.parts]));
  });
  // What can't be drawn on the machine at hand was refused, with a word about it.
  const isRefused = laid.wires.length > 0 && session.get().job === job;
  if (isRefused) return null;
  const laidParts = new Set(laid.parts);
  const splices = drawnOf(session.get()).diagram.parts.filter(
    ({ id, kind }) => kind === "splice" && laidParts.has(id),
  ).length;
  return { wires: laid.wires.length, splices, ends: laid.parts.length - splices };
}
