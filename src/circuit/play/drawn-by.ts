import { addTo } from "../../base/index.ts";
import { type Id, ownerOf } from "../../job/index.ts";
import type { Law } from "../kinds/index.ts";
import type { OperatingPoint, Wiring } from "../solve/index.ts";
import { type BranchEnds, lineAmps } from "./flows.ts";
import type { Layout } from "./layout.ts";
import type { Overload } from "./overload.ts";
import type { PinGraph } from "./pin-graph.ts";

/** Share of a fuse's amps below which a part has no part in blowing it. */
const LEAST_SHARE = 0.01;
/** Share of a fuse's amps that reaches ground past every load, from which it is a dead short. */
const SHORT_SHARE = 0.5;

const LOADS: ReadonlySet<Law["is"]> = new Set([
  "load",
  "led",
  "coil",
  "resistor",
  "sender",
  "wiper",
  "source",
]);

/** One way on for current, from where it is to where it goes. */
interface Way {
  /** The point it leads to; -1 where it is not followed further. */
  readonly to: number;
  readonly amps: number;
  /** Wire or part; null for an unseen join. */
  readonly id: Id | null;
  readonly isLoad: boolean;
  /** Into the pole of a source that drives it: back where it came from. */
  readonly isReturn: boolean;
}

/**
 * The parts that draw what an overloaded fuse carries, the largest first. Where most of it reaches
 * ground past every load: the wires and parts on that way, from the fuse on.
 *
 * Follows the current from the fuse on; where ways part and meet, all that comes in is taken to
 * leave in the same mixture.
 */
export function drawnBy(
  wiring: Wiring,
  { graph, ends }: Pick<Layout, "graph" | "ends">,
  point: OperatingPoint,
  { part: fuse, branch }: Overload,
): readonly Id[] {
  const amps = point.amps[branch] as number;
  const start = (amps > 0 ? ends.b[branch] : ends.a[branch]) as number;
  if (start < 0) return [];
  const ways = waysOn(wiring, graph, ends, point, branch, Math.abs(amps) * 1e-6);
  const { loads, passed, short } = follow(graph, ways, start, Math.abs(amps), fuse);
  if (short >= SHORT_SHARE * Math.abs(amps)) return largestFirst(passed, short * SHORT_SHARE);
  return largestFirst(loads, Math.abs(amps) * LEAST_SHARE);
}

function waysOn(
  { branches }: Wiring,
  graph: PinGraph,
  ends: BranchEnds,
  point: OperatingPoint,
  fuse: number,
  least: number,
): ReadonlyMap<number, readonly Way[]> {
  const ways = new Map<number, Way[]>();
  const add = (from: number, way: Way) => {
    if (from >= 0 && way.amps > least) addTo(ways, from, way);
  };
  const along = lineAmps(branches, graph, ends, point);
  const wireOf = new Map(graph.wires.map(({ line, id }) => [line, id]));
  for (let line = 0; line < along.length; line++) {
    const flow = along[line] as number;
    const [from, to] = flow > 0 ? [graph.a, graph.b] : [graph.b, graph.a];
    add(from[line] as number, {
      to: to[line] as number,
      amps: Math.abs(flow),
      id: wireOf.get(line) ?? null,
      isLoad: false,
      isReturn: false,
    });
  }
  branches.forEach(({ element, owner, acts }, index) => {
    const flow = point.amps[index] as number;
    if (index === fuse || flow === 0) return;
    const [from, to] = flow > 0 ? [ends.a, ends.b] : [ends.b, ends.a];
    // into plus: it is being charged
    const isCharged = acts.is === "source" && flow > 0;
    add(from[index] as number, {
      to: acts.is === "source" ? -1 : (to[index] as number),
      amps: Math.abs(flow),
      id: owner,
      isLoad: isCharged || (acts.is !== "source" && element !== null && LOADS.has(element.law.is)),
      isReturn: acts.is === "source" && !isCharged,
    });
  });
  return ways;
}

function follow(
  graph: PinGraph,
  ways: ReadonlyMap<number, readonly Way[]>,
  start: number,
  amps: number,
  fuse: Id,
) {
  const isReturn = (at: number) =>
    graph.grounds.has(at) || (ways.get(at) ?? []).some((way) => way.isReturn);
  const onFrom = (at: number) => (isReturn(at) ? [] : (ways.get(at) ?? []));
  const reached = new Set([start]);
  const waiting = new Map<number, number>();
  for (const at of reached) {
    for (const { to } of onFrom(at)) {
      if (to < 0) continue;
      reached.add(to);
      waiting.set(to, (waiting.get(to) ?? 0) + 1);
    }
  }
  /** Of the fuse's amps: those that have met no load yet, and those that have. */
  const bare = new Map([[start, amps]]);
  const spent = new Map<number, number>();
  const loads = new Map<Id, number>();
  const passed = new Map<Id, number>();
  let short = 0;
  const plus = <K>(map: Map<K, number>, key: K, more: number) =>
    map.set(key, (map.get(key) ?? 0) + more);
  const most = (id: Id | null, value: number) => {
    if (id !== null && id !== fuse && value > 0)
      passed.set(id, Math.max(passed.get(id) ?? 0, value));
  };

  const queue = [start];
  for (const at of queue) {
    const own = bare.get(at) ?? 0;
    const old = spent.get(at) ?? 0;
    const ref = graph.pins[at];
    if (isReturn(at)) short += own;
    // a ground is named, the battery that it comes back to is not
    if (ref !== undefined && (graph.grounds.has(at) || !isReturn(at))) most(ownerOf(ref), own);
    const on = onFrom(at);
    const out = Math.max(
      on.reduce((sum, way) => sum + way.amps, 0),
      own + old,
    );
    for (const { to, amps: flow, id, isLoad } of on) {
      const share = flow / out;
      if (isLoad && id !== null) plus(loads, id, (own + old) * share);
      else most(id, own * share);
      if (to < 0) continue;
      plus(isLoad ? spent : bare, to, own * share);
      plus(spent, to, old * share);
      const left = (waiting.get(to) ?? 0) - 1;
      waiting.set(to, left);
      if (left === 0) queue.push(to);
    }
  }
  return { loads, passed, short };
}

/** To one part in a million alike counts as alike, in the order in which they were met. */
const largestFirst = (drawn: ReadonlyMap<Id, number>, least: number): readonly Id[] =>
  [...drawn]
    .filter(([, amps]) => amps >= least)
    .map(([id, amps]) => [id, Number(amps.toPrecision(6))] as const)
    .sort(([, one], [, other]) => other - one)
    .map(([id]) => id);
