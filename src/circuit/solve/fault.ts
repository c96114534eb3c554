import { type CavityRef, type Id, type PinId, type PinRef, pinRef } from "../../job/index.ts";
import {
  type Element,
  type ElementFate,
  type FaultMode,
  failuresOf,
  type JointFate,
  pinsOf,
  TERMINAL_FAILURES,
  WIRE_FAILURES,
} from "../kinds/index.ts";
import type { Circuit } from "../machine-circuit.ts";

/** Something that has failed, to be solved with. */
export interface Fault {
  /** Id of a part or a wire; a pin or a cavity for its terminal. */
  readonly part: Id | PinRef | CavityRef;
  readonly mode: FaultMode;
  /** Where several elements or pins of the part can fail so: a pin of the one that did. The first when absent. */
  readonly at?: PinId;
  /** What it is bridged to or leaks to: a pin, a cavity or a wire. */
  readonly to?: Id | PinRef | CavityRef;
}

/** What befalls a joint, with where it leads. */
export interface JointBlow {
  readonly fate: JointFate;
  readonly to: string | null;
}

/** What the faults do, by what they befall. */
export interface Blows {
  /** By pin: the joint between it and its wires. */
  readonly pins: ReadonlyMap<PinRef, readonly JointBlow[]>;
  /** By wire. */
  readonly wires: ReadonlyMap<Id, readonly JointBlow[]>;
  readonly elements: ReadonlyMap<Element, readonly ElementFate[]>;
}

/**
 * `elements`: of each part, as the circuit is laid out with. A fault that its part can't have does
 * nothing.
 */
export function blowsOf(
  faults: readonly Fault[],
  circuit: Circuit,
  elements: ReadonlyMap<Id, readonly Element[]>,
  pinsAt: (cavity: CavityRef) => readonly PinRef[],
): Blows {
  const pins = new Map<PinRef, JointBlow[]>();
  const wires = new Map<Id, JointBlow[]>();
  const befallen = new Map<Element, ElementFate[]>();
  const add = <Key, Value>(map: Map<Key, Value[]>, key: Key, value: Value) => {
    const known = map.get(key);
    if (known) known.push(value);
    else map.set(key, [value]);
  };
  for (const fault of faults) {
    const to = fault.to ?? null;
    if (fault.part.includes(":")) {
      const fate = TERMINAL_FAILURES.find(({ mode }) => mode === fault.mode)?.becomes;
      if (fate === undefined) continue;
      const tied = pinsAt(fault.part);
      for (const pin of tied.length > 0 ? tied : [fault.part]) add(pins, pin, { fate, to });
      continue;
    }
    if (circuit.wires.some(({ id }) => id === fault.part)) {
      const fate = WIRE_FAILURES.find(({ mode }) => mode === fault.mode)?.becomes;
      if (fate !== undefined) add(wires, fault.part, { fate, to });
      continue;
    }
    const part = circuit.parts.find(({ id }) => id === fault.part);
    const failure = part && failuresOf(part).find(({ mode }) => mode === fault.mode);
    if (!part || !failure) continue;
    if (failure.in === "every-pin") {
      for (const pin of struck(pinsOf(part), fault.at, ({ id }) => [id], failure.strikes))
        add(pins, pinRef(part.id, pin.id), { fate: failure.becomes, to });
      continue;
    }
    const laws = failure.in;
    const scope = (elements.get(part.id) ?? []).filter(
      ({ law }) => laws === "every-element" || laws.includes(law.is),
    );
    for (const element of struck(scope, fault.at, ({ a, b }) => [a, b], failure.strikes))
      add(befallen, element, failure.becomes);
  }
  return { pins, wires, elements: befallen };
}

/** What a fault befalls of several: all of them, the one at a pin, or the first. */
function struck<Thing>(
  things: readonly Thing[],
  at: PinId | undefined,
  pinsOfThing: (thing: Thing) => readonly PinId[],
  strikes: "one" | "all",
): readonly Thing[] {
  if (strikes === "all") return things;
  const one =
    at === undefined ? things[0] : things.find((thing) => pinsOfThing(thing).includes(at));
  return one === undefined ? [] : [one];
}
