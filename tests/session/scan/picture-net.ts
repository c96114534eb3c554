import { boundsOf, type Point } from "../../../src/base/index.ts";
import type { TracedNet } from "../../../src/scan/index.ts";
import { asOne, type WholeNet } from "../../../src/session/index.ts";

type Node = readonly [at: Point, ...pins: string[]];
type Run = readonly [from: number, to: number, ...corners: Point[]];

/** A net of a picture: nodes with the pins at them, runs by number of node with their corners. */
export function pictureNet(id: string, nodes: readonly Node[], runs: readonly Run[]): TracedNet {
  const count = (node: number) => runs.filter(([a, b]) => a === node || b === node).length;
  const made = runs.map(([from, to, ...corners]) => ({
    from,
    to,
    points: [nodes[from]?.[0], ...corners, nodes[to]?.[0]] as Point[],
  }));
  return {
    id,
    nodes: nodes.map(([at, ...terminals], node) => ({
      at,
      kind: count(node) > 1 ? "joint" : "end",
      terminals,
    })),
    runs: made,
    terminals: nodes.flatMap(([, ...pins]) => pins),
    box: boundsOf(nodes.map(([at]) => at)) ?? { left: 0, top: 0, right: 0, bottom: 0 },
  };
}

export const wholeNet = (nodes: readonly Node[], runs: readonly Run[]): WholeNet =>
  asOne([pictureNet("N1", nodes, runs)]);
