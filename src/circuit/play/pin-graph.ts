import {
  type Id,
  type Job,
  ownerOf,
  type Part,
  type PinRef,
  pinRef,
  type When,
} from "../../job/index.ts";
import { elementsOf, pinsOf, terminalOf } from "../kinds/index.ts";
import type { Circuit } from "../machine-circuit.ts";
import { CHASSIS_PLACE, chassisPlace, pageKey } from "../places.ts";
import { wireOhms } from "../solve/index.ts";
import { type NetFlows, planNetFlows } from "./net-flows.ts";

/**
 * The pins of a machine and what joins them without resistance: wires, and unseen ones between
 * grounds of one place and page ends of one label, each by way of a hub. What the circuit is like
 * under the solver's nodes.
 */
export interface PinGraph {
  /** Pins by number; the hubs come after them. */
  readonly pins: readonly PinRef[];
  readonly numberOf: ReadonlyMap<PinRef, number>;
  readonly pointCount: number;
  /** The hub that is the chassis itself. */
  readonly chassis: number;
  /** Hubs of all grounds, and the pins that are joined to them unseen. */
  readonly grounds: ReadonlySet<number>;
  readonly wires: readonly WirePlace[];
  /** Ends of each line: first those of `wires` that have one, then the unseen ones. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly flows: NetFlows;
  /** Pins that are parted from the harness, by number. */
  readonly opened: ReadonlySet<number>;
}

export interface WirePlace {
  readonly id: Id;
  readonly from: PinRef;
  readonly to: PinRef;
  /** Numbers of its pins. */
  readonly ends: readonly [number, number];
  /** Its line; -1 for one that has resistance, or that hangs in the air at an opened joint. */
  readonly line: number;
  /** Ends at a joint that is open, so that they touch nothing there. */
  readonly loose: readonly [boolean, boolean];
}

export function pinGraph(job: Job, circuit: Circuit, when: When): PinGraph {
  const pins: PinRef[] = [];
  const numberOf = new Map<PinRef, number>();
  const joints = new Set<Id>();
  for (const part of circuit.parts) {
    const own = pinsOf(part);
    for (const { id } of own) {
      const ref = pinRef(part.id, id);
      if (numberOf.has(ref)) continue;
      numberOf.set(ref, pins.length);
      pins.push(ref);
    }
    if (isJoint(part, job.systemVoltage)) joints.add(part.id);
  }
  let pointCount = pins.length;
  const hubs = new Map<string, number>();
  const hub = (key: string): number => {
    const known = hubs.get(key);
    if (known !== undefined) return known;
    hubs.set(key, pointCount);
    return pointCount++;
  };
  const chassis = hub(`place ${CHASSIS_PLACE}`);
  const grounds = new Set([chassis]);
  const opened = openedPins(job, circuit, when, numberOf);

  const a: number[] = [];
  const b: number[] = [];
  const join = (one: number, other: number): number => {
    a.push(one);
    b.push(other);
    return a.length - 1;
  };
  const wires = circuit.wires.flatMap((wire): WirePlace[] => {
    const ends = [numberOf.get(wire.from), numberOf.get(wire.to)] as const;
    if (ends[0] === undefined || ends[1] === undefined) return [];
    const [from, to] = [ends[0], ends[1]];
    const isLoose = (pin: number, ref: PinRef) => opened.has(pin) && joints.has(ownerOf(ref));
    const loose = [isLoose(from, wire.from), isLoose(to, wire.to)] as const;
    const joins = !loose[0] && !loose[1] && wireOhms(wire) === null;
    const line = joins ? join(from, to) : -1;
    return [{ id: wire.id, from: wire.from, to: wire.to, ends: [from, to], line, loose }];
  });

  const battery = circuit.parts.find((part) => part.kind === "battery");
  const plus = battery && numberOf.get(pinRef(battery.id, "+"));
  for (const part of circuit.parts) {
    if (part.kind !== "ground" && part.kind !== "offpage") continue;
    const pin = numberOf.get(pinRef(part.id, "1"));
    if (pin === undefined || opened.has(pin)) continue;
    if (part.kind === "ground") {
      const place = hub(`place ${chassisPlace(part)}`);
      grounds.add(place);
      grounds.add(pin);
      join(pin, place);
      continue;
    }
    const key = pageKey(part);
    if (key !== null) join(pin, hub(`page ${key}`));
    if (part.is === "ground") {
      grounds.add(pin);
      join(pin, chassis);
    }
    if (part.is === "supply" && plus !== undefined) join(pin, plus);
  }
  const ends = [Int32Array.from(a), Int32Array.from(b)] as const;
  return {
    pins,
    numberOf,
    pointCount,
    chassis,
    grounds,
    wires,
    a: ends[0],
    b: ends[1],
    flows: planNetFlows(pointCount, ends[0], ends[1]),
    opened,
  };
}

/** Nothing but a place where wires meet. */
const isJoint = (part: Part, systemVoltage: number): boolean =>
  elementsOf(part, systemVoltage).length === 0 &&
  pinsOf(part).every((pin) => terminalOf(part, pin.id) === null);

function openedPins(
  job: Job,
  circuit: Circuit,
  { unplugged = [], removed = [] }: When,
  numberOf: ReadonlyMap<PinRef, number>,
): ReadonlySet<number> {
  const ids = new Set([...unplugged, ...removed]);
  const opened = new Set<number>();
  if (ids.size === 0) return opened;
  const open = (ref: PinRef) => {
    const pin = numberOf.get(ref);
    if (pin !== undefined) opened.add(pin);
  };
  for (const part of circuit.parts) {
    if (ids.has(part.id)) for (const pin of pinsOf(part)) open(pinRef(part.id, pin.id));
  }
  for (const { cavity, pin } of job.links) if (ids.has(ownerOf(cavity))) open(pin);
  return opened;
}
