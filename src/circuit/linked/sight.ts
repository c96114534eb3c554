import type { Id, Part, PinRef } from "../../job/index.ts";
import type { NetId, Way } from "../nets.ts";
import { CELL } from "./cells.ts";
import type { LinkedNetwork } from "./linked-network.ts";
import type { Member } from "./member.ts";
import { NetObjects, type NetTerminal, type SometimesFed } from "./net-objects.ts";
import { soleWires } from "./sole-wires.ts";

const objectsOf = new WeakMap<LinkedNetwork, NetObjects>();

function objectsIn(network: LinkedNetwork): NetObjects {
  let found = objectsOf.get(network);
  if (!found) {
    found = new NetObjects(network);
    objectsOf.set(network, found);
  }
  return found;
}

/**
 * The circuit as one question looks at it, with a note of every fact looked at. The answer to the
 * question holds while none of those facts has changed: see `Kept`.
 */
export class Sight {
  private readonly network: LinkedNetwork;
  private readonly objects: NetObjects;
  private readonly cells: number[] = [];
  private readonly note: (index: number, cell: number) => void;

  constructor(network: LinkedNetwork) {
    this.network = network;
    this.objects = objectsIn(network);
    this.note = network.noter((cell) => this.cells.push(cell));
  }

  /** All that was looked at so far. */
  noted(): Int32Array {
    return Int32Array.from(this.cells);
  }

  /** The net of a pin; undefined for a pin that no part has. */
  netOf(ref: PinRef): NetId | undefined {
    const pin = this.network.pin(ref);
    if (pin === undefined) return undefined;
    this.note(pin, CELL.net);
    return this.network.linked.joined.netOf[pin];
  }

  /**
   * Whoever knows the id came by a fact that changes when the part does: only where the part is drawn
   * and what is printed on it may have changed since.
   */
  part(id: Id): Part | undefined {
    return this.network.members.get(id)?.part;
  }

  ways(net: NetId): readonly Way[] {
    this.note(net, CELL.ways);
    return this.objects.ways(net);
  }

  rootward(net: NetId, flow: "in" | "out"): readonly Way[] {
    this.note(net, flow === "in" ? CELL.rootwardIn : CELL.rootwardOut);
    return this.objects.rootward(net, flow);
  }

  terminals(net: NetId): readonly NetTerminal[] {
    this.note(net, CELL.terminals);
    return this.objects.terminals(net);
  }

  rails(net: NetId): readonly SometimesFed[] {
    this.note(net, CELL.rails);
    return this.objects.rails(net);
  }

  /** The pin that feeds the net whatever any switch does; null where there is none. */
  source(net: NetId): PinRef | null {
    this.note(net, CELL.fixed);
    const pin = this.network.linked.facts.source[net] as number;
    return pin < 0 ? null : this.network.ref(pin);
  }

  /** The pin that grounds the net whatever any switch does; null where there is none. */
  ground(net: NetId): PinRef | null {
    this.note(net, CELL.fixed);
    const pin = this.network.linked.facts.ground[net] as number;
    return pin < 0 ? null : this.network.ref(pin);
  }

  /** What lies on the net, a bit of `LIES` each. */
  lies(net: NetId): number {
    this.note(net, CELL.lies);
    return this.network.linked.facts.lies[net] as number;
  }

  leadsBackToBattery(net: NetId): boolean {
    this.note(net, CELL.back);
    return this.network.linked.back[net] === 1;
  }

  /** Batteries in series: some minus terminal stands on another battery's plus. */
  hasRaisedMinus(): boolean {
    this.note(0, CELL.raised);
    return this.network.linked.facts.raised.size > 0;
  }

  /** A relay's coil seen from its first end; undefined where it is no relay. */
  coil(relay: Id): Way | undefined {
    const member = this.network.members.get(relay);
    if (!member?.coil) return undefined;
    return this.element(member, member.elements.indexOf(member.coil));
  }

  /** A part's element by its place in the part, seen from its first end. */
  element(member: Member, index: number): Way | undefined {
    const held = member.elements[index];
    if (!held) return undefined;
    const { element, a, b } = held;
    this.note(a, CELL.net);
    this.note(b, CELL.net);
    return {
      element,
      from: member.pins[a - member.firstPin] as PinRef,
      to: member.pins[b - member.firstPin] as PinRef,
      far: this.network.linked.joined.netOf[b] as number,
      forward: true,
    };
  }

  /** Whether a relay's state may depend on itself, by way of its contacts or of others' (relay-rings.ts). */
  isInRing(relay: Id): boolean {
    const member = this.network.members.get(relay);
    if (!member) return false;
    this.note(member.firstPin, CELL.ring);
    return this.network.linked.rings[member.firstPin] === 1;
  }

  /** Whether any wire, chassis place or page end joins the pin to another. */
  isWired(ref: PinRef): boolean {
    const pin = this.network.pin(ref);
    if (pin === undefined) return false;
    this.note(pin, CELL.hops);
    const { start } = this.network.linked.joined.hops;
    return (start[pin] as number) < (start[pin + 1] as number);
  }

  /** The first pin in the part's own order that lies in the net; null where none does. */
  pinInNet(part: Id, net: NetId): PinRef | null {
    const member = this.network.members.get(part);
    return member?.pins.find((ref) => this.netOf(ref) === net) ?? null;
  }

  /** Ids of wires and parts on the shortest way from one pin to another inside one net, ends left out. */
  wayInsideNet(from: PinRef, to: PinRef): readonly Id[] {
    const start = this.network.pin(from);
    const end = this.network.pin(to);
    if (from === to || start === undefined || end === undefined) return [];
    if (this.search(start, (pin) => pin === end) < 0) return [];
    const ids: Id[] = [];
    for (let pin = end; pin !== start; ) {
      const wire = this.network.wireOf[this.network.pins.wire(pin)];
      if (wire) ids.push(wire.id);
      pin = this.network.pins.from(pin);
      if (pin !== start) ids.push((this.network.memberOfPin[pin] as Member).part.id);
    }
    return ids.reverse();
  }

  /**
   * Numbers of the wires without any one of which the net of a pin would fall in two: whatever comes
   * to their far side comes over them alone. Wires in a ring are not among them, nor are those that
   * hang between two rings.
   */
  soleWires(inside: PinRef): readonly number[] {
    const start = this.network.pin(inside);
    if (start === undefined) return [];
    const { joined } = this.network.linked;
    this.note(joined.netOf[start] as number, CELL.inside);
    return soleWires(this.network, start);
  }

  /** The first pin of the same net, nearest in hops, that is wanted; null when there is none. */
  nearestInNet(from: PinRef, wanted: (part: Part, pin: PinRef) => boolean): PinRef | null {
    const start = this.network.pin(from);
    if (start === undefined) return null;
    const found = this.search(start, (pin) => {
      const member = this.network.memberOfPin[pin] as Member;
      return wanted(member.part, this.network.ref(pin));
    });
    return found < 0 ? null : this.network.ref(found);
  }

  /** Goes from pin to pin inside the net until one will do: that one, or −1. */
  private search(start: number, isEnough: (pin: number) => boolean): number {
    const { joined } = this.network.linked;
    let looked = 0;
    return this.network.pins.run(joined, start, isEnough, (pin) => {
      if (looked++ < MOST_PINS_NOTED) this.note(pin, CELL.hops);
      else this.note(joined.netOf[pin] as number, CELL.inside);
    });
  }
}

/** Past this many pins a search depends on its whole net, which is one note. */
const MOST_PINS_NOTED = 64;

/** An answer with all that it depends on. */
export interface Kept<T> {
  readonly value: T;
  /** Of the network when the question was asked. */
  readonly revision: number;
  readonly cells: Int32Array;
}

/** Asks a question of the circuit as it is now, and notes what the answer depends on. */
export function ask<T>(network: LinkedNetwork, question: (sight: Sight) => T): Kept<T> {
  const sight = new Sight(network);
  const value = question(sight);
  return { value, revision: network.revision, cells: sight.noted() };
}

export const stillHolds = (network: LinkedNetwork, { cells, revision }: Kept<unknown>): boolean =>
  revision === network.revision || network.holds(cells, revision);

/** The answer of before where it still holds, else what the circuit as it is now answers. */
export const askAgain = <T>(
  network: LinkedNetwork,
  before: Kept<T> | undefined,
  question: (sight: Sight) => T,
): Kept<T> => (before && stillHolds(network, before) ? before : ask(network, question));
