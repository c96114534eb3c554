import { type PinRef, pinRef } from "../../job/index.ts";
import type { Branch, OperatingPoint, Wiring } from "../solve/index.ts";
import type { PinGraph } from "./pin-graph.ts";

/** The pins, by number, between which each of a wiring's branches lies, in the branch's own order. */
export interface BranchEnds {
  /** -1 for an end that is no pin of the harness: a pin that is parted from it. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Of each of the graph's wires: the branch that it is because it has resistance, or -1. */
  readonly ofWire: Int32Array;
}

export function branchEnds(wiring: Wiring, graph: PinGraph): BranchEnds {
  const a = new Int32Array(wiring.branches.length).fill(-1);
  const b = new Int32Array(wiring.branches.length).fill(-1);
  const wires = new Map(graph.wires.map((wire, index) => [wire.id, index]));
  const ofWire = new Int32Array(graph.wires.length).fill(-1);
  const pin = (ref: PinRef) => {
    const number = graph.numberOf.get(ref);
    return number === undefined || graph.opened.has(number) ? -1 : number;
  };
  wiring.branches.forEach((branch, index) => {
    const { element, owner, acts } = branch;
    if (element) {
      const [from, to] = isTurned(branch) ? [element.b, element.a] : [element.a, element.b];
      a[index] = pin(pinRef(element.part, from));
      b[index] = pin(pinRef(element.part, to));
    } else if (acts.is === "source" && owner !== null) {
      // a feed that comes from another page, against chassis
      a[index] = pin(pinRef(owner, "1"));
      b[index] = graph.chassis;
    } else {
      const wire = wires.get(owner ?? "");
      if (wire === undefined) return;
      ofWire[wire] = index;
      const { ends, loose } = graph.wires[wire] as PinGraph["wires"][number];
      a[index] = loose[0] ? -1 : ends[0];
      b[index] = loose[1] ? -1 : ends[1];
    }
  });
  return { a, b, ofWire };
}

/** A suppression diode whose cathode is at its element's `a` conducts from `b`. */
function isTurned({ element, acts }: Branch): boolean {
  if (acts.is !== "junction" || !element) return false;
  const { law } = element;
  return (law.is === "coil" || law.is === "load") && law.cathode === "a";
}

/** Amps along each line of the graph, as `PinGraph.a` to `b`. */
export function lineAmps(
  branches: readonly Branch[],
  graph: PinGraph,
  ends: BranchEnds,
  point: OperatingPoint,
): Float64Array {
  const leaving = new Float64Array(graph.pointCount);
  for (let index = 0; index < branches.length; index++) {
    const amps = point.amps[index] as number;
    if (amps === 0) continue;
    const a = ends.a[index] as number;
    const b = ends.b[index] as number;
    if (a >= 0) leaving[a] = (leaving[a] as number) + amps;
    if (b >= 0) leaving[b] = (leaving[b] as number) - amps;
  }
  return graph.flows(leaving);
}
