import { type Branch, circuitOf, elementsOf, type Wiring, wire } from "../circuit/index.ts";
import { type Id, type Job, pinRef } from "../job/index.ts";
import type { ReadingSetup } from "./prediction.ts";

/**
 * An ammeter is a short: it stands in the place of a removed part or across an opened joint, and
 * nowhere else. One sentence why it must not go where it is meant to; null where it may.
 */
export function ammeterPlace(job: Job, machine: Id, setup: ReadingSetup): string | null {
  const wiring = wire(job, machine, setup.when);
  const nets = netsByWire(wiring);
  const netOf = (of: Wiring, nets_: Int32Array, probe: string) => {
    const probed = of.probe(probe);
    return probed.ok ? (nets_[probed.node] as number) : null;
  };
  const red = netOf(wiring, nets, setup.red);
  const black = netOf(wiring, nets, setup.black);
  const isPlace = (a: number | null, b: number | null) =>
    (a === red && b === black) || (a === black && b === red);

  const removed = new Set(setup.when.removed ?? []);
  for (const part of circuitOf(job, machine).parts) {
    if (!removed.has(part.id)) continue;
    for (const { a, b } of elementsOf(part, job.systemVoltage)) {
      const [from, to] = [a, b].map((pin) => netOf(wiring, nets, pinRef(part.id, pin)));
      if (isPlace(from ?? null, to ?? null)) return null;
    }
  }

  const together = wire(job, machine, { ...setup.when, unplugged: [], removed: [] });
  const joined = netsByWire(together);
  if (
    red !== black &&
    netOf(together, joined, setup.red) === netOf(together, joined, setup.black)
  ) {
    return null;
  }
  return "An ammeter belongs in the place of a removed part or across an opened joint: here it would be a short.";
}

/** Nodes that only wires lie between share a net, whatever the wires' ohms. */
function netsByWire({ nodeCount, branches }: Wiring): Int32Array {
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
