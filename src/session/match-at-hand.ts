import { keptOf } from "../base/index.ts";
import { type Id, type Job, ownerOf, type Part, type PartOf } from "../job/index.ts";
import { drawnOf } from "./changes/index.ts";
import { tiedTo } from "./match.ts";
import type { SessionState } from "./state.ts";

/** The modules of a drawing in its order. */
export const modulesIn = keptOf((parts: readonly Part[]): readonly PartOf<"module">[] =>
  parts.filter((part) => part.kind === "module"),
);

/**
 * The module whose pins are being tied: the one that is selected, itself or by a pin or by a cavity
 * that one of its pins sits in; else the one chosen before, one that sits on the plug at hand, or
 * the first one.
 */
export function moduleAtHand(state: SessionState): Id | null {
  const job = drawnOf(state);
  const modules = modulesIn(job.diagram.parts);
  const tied = tiedTo(job);
  const known = (id: Id | null | undefined) => modules.find((module) => module.id === id);
  for (const ref of state.selection) {
    const named = known(ownerOf(ref)) ?? known(ownerOf(tied.get(ref) ?? ""));
    if (named) return named.id;
  }
  const there = known(state.module) ?? known(state.plug && moduleOn(job, state.plug)) ?? modules[0];
  return there?.id ?? null;
}

/** The module that the first tied cavity of a plug belongs to; null where none is tied. */
export function moduleOn(job: Job, plug: Id): Id | null {
  const tie = job.links.find(({ cavity }) => ownerOf(cavity) === plug);
  return tie ? ownerOf(tie.pin) : null;
}

/** The plug that the first tied pin of a module sits in; null where none is tied. */
export function plugOf(job: Job, module: Id): Id | null {
  const tie = job.links.find(({ pin }) => ownerOf(pin) === module);
  return tie ? ownerOf(tie.cavity) : null;
}
