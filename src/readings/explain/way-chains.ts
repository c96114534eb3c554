import type { Branch } from "../../circuit/index.ts";
import type { PinRef, Wire } from "../../job/index.ts";
import type { FaultTrial } from "./trial-fault.ts";

/** Parts and wires in one line without a branching: whichever of them opens, a meter shows the same. */
export interface Chain {
  /** In the order of the line. */
  readonly branches: readonly Branch[];
  /** Pins at its two ends. */
  readonly ends: readonly [PinRef, PinRef];
  /** Nodes at its two ends. */
  readonly nodes: readonly [number, number];
}

/** The pin of a branch at one of its nodes; null for what is no wire and no declared element. */
export function pinAt(
  { owner, element, a, b }: Branch,
  node: number,
  wires: ReadonlyMap<string, Wire>,
): PinRef | null {
  if (owner === null || (node !== a && node !== b)) return null;
  if (element) return `${owner}:${node === a ? element.a : element.b}`;
  const wire = wires.get(owner);
  if (!wire) return null;
  return node === a ? wire.from : wire.to;
}

/** The lines between two nodes that a current from one to the other takes: those of whose branches `isOnWay` says so. */
export function chainsOnTheWay(
  { healthy: { wiring }, sound: { point } }: FaultTrial,
  isOnWay: (branch: Branch, ohms: number) => boolean,
  ends: readonly [number, number],
  wires: ReadonlyMap<string, Wire>,
): readonly Chain[] {
  const degree = new Int32Array(wiring.nodeCount);
  const onWay = new Map<number, Branch[]>();
  const way: Branch[] = [];
  wiring.branches.forEach((branch, index) => {
    const { a, b, acts, element } = branch;
    const ohms = point.ohms[index] as number;
    if (!Number.isFinite(ohms) || a === b) return;
    degree[a] = (degree[a] as number) + 1;
    degree[b] = (degree[b] as number) + 1;
    if (!isOnWay(branch, ohms)) return;
    const law = element?.law.is;
    // a diode across a coil is not the coil
    if (acts.is === "junction" && law !== "diode" && law !== "led") return;
    if (pinAt(branch, a, wires) === null) return;
    way.push(branch);
    for (const node of [a, b]) {
      const known = onWay.get(node);
      if (known) known.push(branch);
      else onWay.set(node, [branch]);
    }
  });
  // a battery is a spot of its own: its posts are where a mechanic measures
  const posts = new Set(way.flatMap(({ acts, a, b }) => (acts.is === "source" ? [a, b] : [])));
  const isEnd = (node: number) =>
    ends.includes(node) || posts.has(node) || degree[node] !== 2 || onWay.get(node)?.length !== 2;
  const done = new Set<Branch>();
  /** On from a branch by one of its nodes to the end of its line. */
  const follow = (from: Branch, by: number) => {
    const line: Branch[] = [];
    let node = by;
    let branch = from;
    while (!isEnd(node)) {
      const next = onWay.get(node)?.find((one) => one !== branch);
      if (!next || done.has(next)) break;
      done.add(next);
      line.push(next);
      branch = next;
      node = next.a === node ? next.b : next.a;
    }
    return { line, node, last: branch };
  };
  return way.flatMap((branch): readonly Chain[] => {
    if (done.has(branch)) return [];
    done.add(branch);
    const back = follow(branch, branch.a);
    const on = follow(branch, branch.b);
    const first = pinAt(back.last, back.node, wires);
    const last = pinAt(on.last, on.node, wires);
    if (first === null || last === null) return [];
    return [
      {
        branches: [...back.line.reverse(), branch, ...on.line],
        ends: [first, last],
        nodes: [back.node, on.node],
      },
    ];
  });
}
