import { freeze } from "immer";
import type { Job } from "../../job/index.ts";

/**
 * A job cut up for its way from one thread to another. Copying a large one there and back in one go
 * holds the screen up for many frames; its pieces are copied one at a time, between frames.
 */
export interface CutJob {
  /** The job with nothing in its long lists. */
  readonly outline: Job;
  readonly pieces: readonly JobPiece[];
}

/** Some members of one of the long lists, which come behind those before them. */
export interface JobPiece {
  readonly list: LongList;
  readonly members: readonly unknown[];
}

type LongList =
  | "parts"
  | "wires"
  | "plugs"
  | "links"
  | { readonly of: "wires" | "readings"; readonly machine: number };

/** Members to a piece: a millisecond or two to copy. A plug has some dozens of cavities. */
const MEMBERS = { most: 250, plugs: 12 } as const;

export function cutJob(job: Job): CutJob {
  const pieces: JobPiece[] = [];
  const cut = <T>(list: LongList, members: readonly T[]): T[] => {
    const many = list === "plugs" ? MEMBERS.plugs : MEMBERS.most;
    for (let from = 0; from < members.length; from += many)
      pieces.push({ list, members: members.slice(from, from + many) });
    return [];
  };
  const { diagram } = job;
  const outline: Job = {
    ...job,
    diagram: {
      ...diagram,
      parts: cut("parts", diagram.parts),
      wires: cut("wires", diagram.wires),
    },
    plugs: cut("plugs", job.plugs),
    links: cut("links", job.links),
    machines: job.machines.map((one, machine) => ({
      ...one,
      wires: cut({ of: "wires", machine }, one.wires),
      readings: cut({ of: "readings", machine }, one.readings),
    })),
  };
  return { outline, pieces };
}

/** Takes pieces as they come and makes the job of them, frozen bit by bit as it grows. */
export function createJoiner(outline: Job): { add(piece: JobPiece): void; job(): Job } {
  const listOf = (list: LongList): unknown[] => {
    if (typeof list === "object") {
      const machine = outline.machines[list.machine];
      if (!machine) throw new Error(`no machine ${list.machine}`);
      return machine[list.of];
    }
    if (list === "parts" || list === "wires") return outline.diagram[list];
    return outline[list];
  };
  return {
    add({ list, members }) {
      const into = listOf(list);
      for (const one of members) into.push(freeze(one, true));
    },
    // What is in it is frozen already and not gone through again.
    job: () => freeze(outline, true),
  };
}
