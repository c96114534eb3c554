import { Groups } from "../base/index.ts";
import { type Id, type Part, type PinRef, pinRef, type Wire } from "../job/index.ts";
import { type Element, elementsOf, pinsOf, type Terminal, terminalOf } from "./kinds/index.ts";
import type { Circuit } from "./machine-circuit.ts";
import { chassisPlace, pageKey } from "./places.ts";

/** Index of a net in `Network.nets`. */
export type NetId = number;

/** Everything that is one and the same point of the circuit whatever any switch does. */
export interface Net {
  readonly pins: readonly PinRef[];
  readonly terminals: readonly PinTerminal[];
  /** Part elements that leave this net, as seen from it. */
  readonly ways: readonly Way[];
}

/** A pin that is more than the end of an element. */
export interface PinTerminal {
  readonly pin: PinRef;
  readonly part: Part;
  readonly terminal: Terminal;
}

/** An element of a part seen from one of its two nets. */
export interface Way {
  readonly element: Element;
  readonly from: PinRef;
  readonly to: PinRef;
  readonly far: NetId;
  /** True where `from` is the element's `a`. */
  readonly forward: boolean;
}

/** One hop between two pins of the same net: along a wire, or unseen through ground or a page end. */
export interface Hop {
  readonly to: PinRef;
  /** Null where chassis or an equal page-end label makes the join. */
  readonly wire: Id | null;
}

export interface Network {
  readonly parts: ReadonlyMap<Id, Part>;
  readonly wires: ReadonlyMap<Id, Wire>;
  readonly nets: readonly Net[];
  /** The net of a pin; undefined for a pin that no part has. */
  readonly netOf: ReadonlyMap<PinRef, NetId>;
  readonly hops: ReadonlyMap<PinRef, readonly Hop[]>;
  /** Page ends that have no partner and whose beyond the user has not named. */
  readonly untraced: ReadonlySet<PinRef>;
}

/** What makes separate pins one point without a wire: chassis places and equal page-end labels. */
function unseenJoinKey(part: Part): string | null {
  if (part.kind === "ground") return `ground ${chassisPlace(part)}`;
  if (part.kind !== "offpage") return null;
  const key = pageKey(part);
  return key === null ? null : `page ${key}`;
}

/** Merges wires, chassis places and page ends into nets and hangs every part element between them. */
export function buildNetwork(circuit: Circuit, systemVoltage: number): Network {
  const parts = new Map(circuit.parts.map((part) => [part.id, part]));
  const wires = new Map(circuit.wires.map((wire) => [wire.id, wire]));
  const numberOf = new Map<PinRef, number>();
  const hops = new Map<PinRef, Hop[]>();
  for (const part of circuit.parts) {
    for (const pin of pinsOf(part)) {
      const ref = pinRef(part.id, pin.id);
      if (!numberOf.has(ref)) numberOf.set(ref, numberOf.size);
      hops.set(ref, []);
    }
  }
  const together = new Groups(numberOf.size);
  const join = (a: PinRef, b: PinRef, wire: Id | null) => {
    const numberA = numberOf.get(a);
    const numberB = numberOf.get(b);
    if (numberA === undefined || numberB === undefined) return;
    hops.get(a)?.push({ to: b, wire });
    hops.get(b)?.push({ to: a, wire });
    together.join(numberB, numberA);
  };
  for (const wire of circuit.wires) join(wire.from, wire.to, wire.id);

  const firstWithKey = new Map<string, PinRef>();
  const pageCounts = new Map<string, number>();
  for (const part of circuit.parts) {
    if (part.kind === "offpage") {
      const label = pageKey(part) ?? "";
      pageCounts.set(label, (pageCounts.get(label) ?? 0) + 1);
    }
    const key = unseenJoinKey(part);
    if (key === null) continue;
    const pin = pinRef(part.id, "1");
    const first = firstWithKey.get(key);
    if (first === undefined) firstWithKey.set(key, pin);
    else join(first, pin, null);
  }

  const untraced = new Set<PinRef>();
  for (const part of circuit.parts) {
    if (part.kind !== "offpage" || part.is !== undefined) continue;
    const label = pageKey(part) ?? "";
    if (label === "" || pageCounts.get(label) === 1) untraced.add(pinRef(part.id, "1"));
  }

  const netOf = new Map<PinRef, NetId>();
  const idOfRoot = new Map<number, NetId>();
  const nets: { pins: PinRef[]; terminals: PinTerminal[]; ways: Way[] }[] = [];
  for (const part of circuit.parts) {
    for (const pin of pinsOf(part)) {
      const ref = pinRef(part.id, pin.id);
      const root = together.of(numberOf.get(ref) ?? 0);
      let id = idOfRoot.get(root);
      if (id === undefined) {
        id = nets.length;
        idOfRoot.set(root, id);
        nets.push({ pins: [], terminals: [], ways: [] });
      }
      netOf.set(ref, id);
      nets[id]?.pins.push(ref);
      const terminal = terminalOf(part, pin.id);
      if (terminal) nets[id]?.terminals.push({ pin: ref, part, terminal });
    }
  }
  for (const part of circuit.parts) {
    for (const element of elementsOf(part, systemVoltage)) {
      const a = pinRef(part.id, element.a);
      const b = pinRef(part.id, element.b);
      const netA = netOf.get(a);
      const netB = netOf.get(b);
      if (netA === undefined || netB === undefined) continue;
      nets[netA]?.ways.push({ element, from: a, to: b, far: netB, forward: true });
      nets[netB]?.ways.push({ element, from: b, to: a, far: netA, forward: false });
    }
  }
  return { parts, wires, nets, netOf, hops, untraced };
}
