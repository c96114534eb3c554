import { produce } from "immer";
import { type Job, newJob, type Part, type Wire } from "../../../src/job/index.ts";

/** A job with one sheet, `s1`, and these parts and wires on it. */
export function drawing(
  parts: readonly (Partial<Part> & { id: string; kind: Part["kind"] })[],
  wires: readonly Wire[] = [],
): Job {
  return produce(newJob("Test", 24), (job) => {
    job.diagram.sheets.push({ id: "s1" });
    for (const part of parts) {
      job.diagram.parts.push({ sheet: "s1", at: [0, 0], turn: 0, unit: 10, ...part } as Part);
    }
    job.diagram.wires.push(...(wires as Wire[]));
  });
}

export const edit = (job: Job, change: (draft: Job) => void): Job =>
  produce(job, (draft: Job) => {
    change(draft);
  });

export function found<T extends { id: string }>(list: readonly T[], id: string): T {
  const one = list.find((candidate) => candidate.id === id);
  if (!one) throw new Error(`no ${id}`);
  return one;
}
