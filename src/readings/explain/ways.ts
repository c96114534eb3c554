import { addTo } from "../../base/index.ts";
import type { Branch, Wiring } from "../../circuit/index.ts";
import { type Id, ownerOf, type Part, type PinRef, type Wire } from "../../job/index.ts";

/**
 * What could ever conduct in a state, joint by joint: between each pin of a part and the wires there
 * lies an edge of its own, so that no single joint, wire or part that goes bad makes one node two.
 * Contacts of relays and paths of modules count as closed, whatever closes them.
 */
export interface Ways {
  /** By node: what lies one step on. */
  readonly next: ReadonlyMap<number, readonly number[]>;
  /** A branch's end inside its part. */
  inside(branch: Branch, end: "a" | "b"): number;
  /** Where wires meet at a pin: before the joint to the frame, for a ground's own. */
  groundEnd(pin: PinRef, node: number): number;
  /** Where a probe may lie instead once a joint at a node goes bad: the part's own side, or a wire's end. */
  behind(node: number): readonly number[];
  /** The node of the wiring that one lies at. */
  wiringNode(node: number): number;
  /** Nodes that stand for something nobody knows. */
  readonly unknown: ReadonlySet<number>;
}

export function waysOf(
  wiring: Wiring,
  parts: ReadonlyMap<Id, Part>,
  wires: readonly Wire[],
  joints: "any may be bad" | "good",
): Ways {
  const next = new Map<number, number[]>();
  const names = new Map<string, number>();
  const lies = new Map<number, number>();
  const hung = new Map<number, number[]>();
  let count = wiring.nodeCount;
  const oneWay = (a: number, b: number) => {
    const known = next.get(a);
    if (known) known.push(b);
    else next.set(a, [b]);
  };
  const join = (a: number, b: number) => {
    oneWay(a, b);
    oneWay(b, a);
  };
  /** A node of its own behind a node of the wiring, joined to it. */
  const behind = (name: string, node: number): number => {
    const known = names.get(name);
    if (known !== undefined) return known;
    const fresh = count++;
    names.set(name, fresh);
    lies.set(fresh, lies.get(node) ?? node);
    addTo(hung, node, fresh);
    join(fresh, node);
    return fresh;
  };
  // no two pins of one part are one node of the wiring: wires have ohms here
  const inside = ({ owner, element, a, b }: Branch, end: "a" | "b"): number => {
    const node = end === "a" ? a : b;
    return element && owner !== null ? behind(`${owner} ${node}`, node) : node;
  };
  const wireOf = new Map(wires.map((wire) => [wire.id, wire]));
  /** The frame is one node however many grounds there are: each has a joint of its own to it. */
  const endOf = (ref: PinRef, node: number): number => {
    if (joints === "good") return node;
    const part = parts.get(ownerOf(ref));
    return part?.kind === "ground" ? behind(`ground ${ref} ${node}`, node) : node;
  };
  const crimp = ({ id }: Wire, end: "from" | "to", node: number): number =>
    joints === "good" ? node : behind(`wire ${id} ${end}`, node);
  for (const branch of wiring.branches) {
    const { owner, element, acts, closedIn } = branch;
    if (acts.is === "source") continue;
    const stands = owner === null ? undefined : wiring.positions.get(owner);
    if (closedIn !== null && (stands === undefined || !closedIn.includes(stands))) continue;
    const wire = element === null && owner !== null ? wireOf.get(owner) : undefined;
    if (wire) {
      const from = endOf(wire.from, branch.a);
      const to = endOf(wire.to, branch.b);
      join(crimp(wire, "from", from), crimp(wire, "to", to));
    } else if (acts.is === "junction") oneWay(inside(branch, "a"), inside(branch, "b"));
    else join(inside(branch, "a"), inside(branch, "b"));
  }
  const unknown = new Set<number>();
  const meetIn = (nodes: readonly number[]) => {
    const hub = count++;
    for (const node of nodes) join(hub, node);
    return hub;
  };
  for (const { nodes } of wiring.unknowns) unknown.add(meetIn(nodes));
  for (const { nodes } of wiring.draws) meetIn(nodes);
  return {
    next,
    inside,
    groundEnd: endOf,
    behind: (node) => hung.get(node) ?? [],
    wiringNode: (node) => lies.get(node) ?? node,
    unknown,
  };
}

/** Nodes reached from one along the ways, those barred left out. */
export function reached(
  { next }: Pick<Ways, "next">,
  from: number,
  barred: ReadonlySet<number>,
): ReadonlySet<number> {
  const seen = new Set<number>();
  if (barred.has(from)) return seen;
  seen.add(from);
  const stack = [from];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    for (const far of next.get(node) ?? []) {
      if (seen.has(far) || barred.has(far)) continue;
      seen.add(far);
      stack.push(far);
    }
  }
  return seen;
}

/** A shortest way from one node to another; null where none leads there. */
export function someWay(
  { next }: Pick<Ways, "next">,
  from: number,
  to: number,
  barred: ReadonlySet<number>,
): readonly number[] | null {
  if (barred.has(from) || barred.has(to)) return null;
  const cameFrom = new Map<number, number | null>([[from, null]]);
  const queue = [from];
  for (const node of queue) {
    if (node === to) break;
    for (const far of next.get(node) ?? []) {
      if (cameFrom.has(far) || barred.has(far)) continue;
      cameFrom.set(far, node);
      queue.push(far);
    }
  }
  if (!cameFrom.has(to)) return null;
  const path: number[] = [];
  for (let node: number | null = to; node !== null; node = cameFrom.get(node) ?? null)
    path.push(node);
  return path;
}
