import type { Branch, Wiring } from "../circuit/index.ts";

/** Nodes that only wires lie between share a net, whatever the wires' ohms: net of each node. */
export function netsByWire({ nodeCount, branches }: Wiring): Int32Array {
  const net = Int32Array.from({ length: nodeCount }, (_, node) => node);
  const root = (node: number): number => {
    let up = node;
    while (net[up] !== up) up = net[up] as number;
    return up;
  };
  const isWire = ({ element, acts }: Branch) => element === null && acts.is === "ohmic";
  for (const branch of branches) if (isWire(branch)) net[root(branch.a)] = root(branch.b);
  return net.map((_, node) => root(node));
}
