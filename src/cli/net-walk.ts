import type { Point } from "../base/index.ts";
import type { NetNode, NetRun } from "../scan/index.ts";

type Node = Pick<NetNode, "at" | "kind" | "terminals">;
type Run = Pick<NetRun, "from" | "to" | "points">;

/** The lines of a net, as far as a walk over them needs to know. */
export interface Lines {
  readonly nodes: readonly Node[];
  readonly runs: readonly Run[];
}

/**
 * One walk over all the lines of a net, corner by corner: between two points of it there is always a
 * line. Where lines branch it goes out along one and comes back the same way before the next, so that
 * a net of two ends is just the way from one to the other. It begins at a terminal where there is one.
 */
export function walkOf({ nodes, runs }: Lines): readonly Point[] {
  const ways = nodes.map((): Run[] => []);
  for (const run of runs) for (const node of [run.from, run.to]) ways[node]?.push(run);
  const seen = new Set<number>();
  const walked = new Set<Run>();
  const walk: Point[] = [];
  const step = (points: readonly Point[]) => {
    for (const point of points) {
      const last = walk.at(-1);
      if (last?.[0] !== point[0] || last[1] !== point[1]) walk.push(point);
    }
  };
  for (const start of startsOf(nodes)) {
    if (seen.has(start)) continue;
    step([(nodes[start] as Node).at]);
    const trail: { readonly node: number; readonly back: readonly Point[] }[] = [
      { node: start, back: [] },
    ];
    let farthest = walk.length;
    for (let here = trail.at(-1); here; here = trail.at(-1)) {
      seen.add(here.node);
      const run = ways[here.node]?.pop();
      if (!run) {
        step(here.back);
        trail.pop();
      } else if (!walked.has(run)) {
        walked.add(run);
        const isForward = run.from === here.node;
        const back = [...run.points].reverse();
        step(isForward ? run.points : back);
        farthest = walk.length;
        trail.push({ node: isForward ? run.to : run.from, back: isForward ? back : run.points });
      }
    }
    // The way back after the last line leads to nothing new.
    walk.length = farthest;
  }
  return walk;
}

/** Numbers of the nodes, those first that a walk is best begun at: ends at a terminal, other ends. */
function startsOf(nodes: readonly Node[]): readonly number[] {
  const ranks = nodes.map(
    ({ kind, terminals }) => (kind === "end" ? 0 : 2) + (terminals.length > 0 ? 0 : 1),
  );
  return nodes.map((_, node) => node).sort((a, b) => (ranks[a] as number) - (ranks[b] as number));
}
