import type { Conductors, Job } from "../job/index.ts";

/** Says something of the machine's wires; `undefined` takes it back, and with the last of it all. */
export function setConductors(
  draft: Job,
  change: { [K in keyof Conductors]?: Conductors[K] | undefined },
): void {
  const next: Record<string, unknown> = { ...draft.conductors, ...change };
  // the insulation is a column of the table, so that choosing one chooses the other
  if ("insulation" in change)
    next.table = change.insulation === undefined ? undefined : "33-cfr-183.425";
  for (const [name, value] of Object.entries(next)) if (value === undefined) delete next[name];
  if (Object.keys(next).length === 0) delete draft.conductors;
  else draft.conductors = next as Conductors;
}
