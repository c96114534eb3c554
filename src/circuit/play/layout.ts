import { addTo } from "../../base/index.ts";
import { type CavityRef, cavityRef, type Job, type Probe, type When } from "../../job/index.ts";
import type { Circuit } from "../machine-circuit.ts";
import type { Branch, Wiring } from "../solve/index.ts";
import { type BranchEnds, branchEnds } from "./flows.ts";
import { type PinGraph, pinGraph } from "./pin-graph.ts";

/** Where everything on the drawing lies in a wiring, whatever its switches do. */
export interface Layout {
  readonly graph: PinGraph;
  readonly ends: BranchEnds;
  /** Node of each of the graph's pins as a probe finds it; -1 for nowhere. */
  readonly pinNodes: Int32Array;
  /** Node that tells how each of the graph's wires lies; -1 for one that hangs on nothing. */
  readonly wireNodes: Int32Array;
  readonly cavityNodes: ReadonlyMap<CavityRef, number>;
  /** Of pins that are open joints, by number: the wires, by number, that end in the air there. */
  readonly halves: ReadonlyMap<number, readonly number[]>;
}

/** Finds layouts; wirings that differ only in how their switches stand share one. */
export function layouts(job: Job, circuit: Circuit): (wiring: Wiring, when: When) => Layout {
  const known = new WeakMap<readonly Branch[], Layout>();
  return (wiring, when) => {
    const found = known.get(wiring.branches) ?? layOut(job, circuit, wiring, when);
    known.set(wiring.branches, found);
    return found;
  };
}

function layOut(job: Job, circuit: Circuit, wiring: Wiring, when: When): Layout {
  const graph = pinGraph(job, circuit, when);
  const nodeAt = (probe: Probe): number => {
    const found = wiring.probe(probe);
    return found.ok ? found.node : -1;
  };
  const pinNodes = Int32Array.from(graph.pins, nodeAt);
  // a wire belongs to the harness, also where its pin is a module's
  const harness = (ref: Probe): number => {
    const found = wiring.probe(ref, "harness");
    return found.ok ? found.node : -1;
  };
  const halves = new Map<number, number[]>();
  const wireNodes = Int32Array.from(graph.wires, ({ from, to, ends, loose }, index) => {
    for (const end of [0, 1] as const) {
      if (loose[end]) addTo(halves, ends[end], index);
    }
    if (!loose[0]) return harness(from);
    return loose[1] ? -1 : harness(to);
  });
  const cavityNodes = new Map<CavityRef, number>();
  const matched = new Set(job.links.map(({ cavity }) => cavity));
  for (const plug of job.plugs) {
    for (const { mark } of plug.cavities) {
      const ref = cavityRef(plug.id, mark);
      // of a cavity that no pin is matched to the drawing says nothing: it is not told as floating
      if (matched.has(ref)) cavityNodes.set(ref, nodeAt(ref));
    }
  }
  return { graph, ends: branchEnds(wiring, graph), pinNodes, wireNodes, cavityNodes, halves };
}
