import { addTo, type Box, boxAround, type Point } from "../../base/index.ts";
import type { NetNode, NetRun, TracedNet } from "../../scan/index.ts";
import { NameGroups } from "./name-groups.ts";

/**
 * All lines of the picture that come to the same pins, as one net: a splice or a ground that is placed
 * already cuts a line into several.
 */
export interface WholeNet extends TracedNet {
  /** Ids of the nets of the picture in it. */
  readonly of: readonly string[];
}

/** Every net once, in the order of the first of its own. */
export function wholeNets(nets: readonly TracedNet[]): readonly WholeNet[] {
  const groups = new NameGroups();
  for (const { id, terminals } of nets)
    for (const pin of terminals) groups.join(`net ${id}`, `pin ${pin}`);
  const members = new Map<string, TracedNet[]>();
  for (const net of nets) addTo(members, groups.of(`net ${net.id}`), net);
  return [...members.values()].map(asOne);
}

/** Nets as one, whether or not they share a pin. At least one must be given. */
export function asOne(nets: readonly (TracedNet | WholeNet)[]): WholeNet {
  const [first] = nets as readonly [TracedNet];
  const of = nets.flatMap((net) => ("of" in net ? net.of : [net.id]));
  if (nets.length === 1) return { ...first, of };
  const nodes: NetNode[] = [];
  const runs: NetRun[] = [];
  for (const net of nets) {
    const shift = nodes.length;
    nodes.push(...net.nodes);
    runs.push(...net.runs.map((run) => ({ ...run, from: run.from + shift, to: run.to + shift })));
  }
  return {
    id: first.id,
    of,
    nodes,
    runs,
    terminals: [...new Set(nets.flatMap(({ terminals }) => terminals))],
    box: boxAround(nets.map(({ box }) => box)),
  };
}

/** Of each node how many ends of runs come to it. */
export function degreesOf({ nodes, runs }: Pick<TracedNet, "nodes" | "runs">): number[] {
  const degrees = nodes.map(() => 0);
  for (const { from, to } of runs) {
    degrees[from] = (degrees[from] ?? 0) + 1;
    degrees[to] = (degrees[to] ?? 0) + 1;
  }
  return degrees;
}

/** A word of the picture as high as this many pixels more may still be touched by a line at it. */
const AT_WORD = 3;

/** A free end that is no more than a stroke sticking out of a word: nothing goes on there. */
export function isWordStub(at: Point, length: number, words: readonly Box[]): boolean {
  return words.some(({ left, top, right, bottom }) => {
    const [x, y] = at;
    const inside =
      x >= left - AT_WORD && x <= right + AT_WORD && y >= top - AT_WORD && y <= bottom + AT_WORD;
    return inside && length <= 1.5 * Math.min(bottom - top, right - left);
  });
}
