import { type Id, type PartOf, pinRef } from "../../job/index.ts";
import { restPosition } from "../kinds/index.ts";
import { feedOf } from "../kinds/module.ts";
import type { Circuit } from "../machine-circuit.ts";
import { between, type OperatingPoint, type Wiring } from "../solve/index.ts";
import type { Hands } from "./hands.ts";
import type { PartState } from "./live-state.ts";
import { MAY_ACT } from "./may-act.ts";
import type { Memory } from "./memory.ts";

/** How every part of a machine is, by its id. */
export function partStates(
  circuit: Circuit,
  wiring: Wiring,
  point: OperatingPoint,
  memory: Memory,
  hands: Hands,
  blown: ReadonlySet<Id>,
  oscillating: ReadonlySet<Id>,
): Readonly<Record<Id, PartState>> {
  const amps = new Map<Id, number>();
  const shares = new Map<Id, number>();
  wiring.branches.forEach(({ owner, element, a, b }, index) => {
    if (owner === null || !element) return;
    const flow = Math.abs(point.amps[index] as number);
    if (flow > (amps.get(owner) ?? 0)) amps.set(owner, flow);
    if (element.law.is !== "load" && element.law.is !== "led") return;
    const share = Math.abs(between(point, a, b) ?? 0) / wiring.systemVoltage;
    if (share > (shares.get(owner) ?? 0)) shares.set(owner, share);
  });
  const decided = new Map<Id, boolean>();
  const deciding = new Set<Id>();
  for (const decider of wiring.deciders) {
    deciding.add(decider.part);
    if (decider.is !== "level") decided.set(decider.part, memory.states.get(decider.id) ?? false);
  }
  const states: Record<Id, PartState> = {};
  const unplugged = new Set(hands.unplugged);
  const removed = new Set(hands.removed);
  for (const part of circuit.parts) {
    const { id } = part;
    // what a module draws for itself neither moves nor lights
    const share = part.kind === "module" ? 0 : (shares.get(id) ?? 0);
    const on =
      decided.get(id) ??
      (part.kind === "module"
        ? (isFed(part, wiring, point) ?? deciding.has(id))
        : share >= MAY_ACT);
    const state: Writable<PartState> = { on, share, amps: amps.get(id) ?? 0 };
    if (part.kind === "switch") {
      const position = hands.switches[id] ?? restPosition(part);
      if (position !== undefined) state.position = position;
    }
    if (blown.has(id)) state.blown = true;
    if (unplugged.has(id)) state.unplugged = true;
    if (removed.has(id)) state.removed = true;
    if (oscillating.has(id)) state.oscillates = true;
    states[id] = state;
  }
  return states;
}

type Writable<T> = { -readonly [Key in keyof T]: T[Key] };

/** The same, with those marked of which nobody can tell. */
export function withUndecided(
  states: Readonly<Record<Id, PartState>>,
  undecided: ReadonlySet<Id>,
): Readonly<Record<Id, PartState>> {
  if (undecided.size === 0) return states;
  const marked = { ...states };
  for (const id of undecided) {
    const own = marked[id];
    if (own) marked[id] = { ...own, undecided: true };
  }
  return marked;
}

/** Whether a module has power; null where nobody has said what feeds it: it acts always. */
function isFed(part: PartOf<"module">, wiring: Wiring, point: OperatingPoint): boolean | null {
  const feed = feedOf(part, wiring.systemVoltage);
  if (!feed) return null;
  return [feed.fedBy, ...(feed.orBy ?? [])].some(([supply, ground]) => {
    const a = wiring.probe(pinRef(part.id, supply), "own");
    const b = wiring.probe(pinRef(part.id, ground), "own");
    return a.ok && b.ok && (between(point, a.node, b.node) ?? 0) >= feed.minVolts;
  });
}
