import type { Terminal } from "../kinds/index.ts";
import { LIES } from "./lies.ts";
import { type CommandedContact, type Inlet, type Member, PASSES } from "./member.ts";

/**
 * What joining up asks of the parts and not of the wires: sorted out once, and kept for as long as
 * no part comes, goes or changes. Lists are in the order of the drawing.
 */
export interface Roster {
  readonly members: readonly Member[];
  readonly modules: readonly Member[];
  readonly batteries: readonly Member[];
  /** Fuses and breakers. */
  readonly protections: readonly Member[];
  /** Those in which something does work. */
  readonly loaded: readonly Member[];
  /** By the pin's number: the same number; −1 where there is no such pin any more. */
  readonly pins: Int32Array;
  readonly pinCount: number;
  /** Pins that are one point without a wire, two by two: each with the first of its kind. */
  readonly joins: Int32Array;
  /** Pins that are more than the end of an element: twice the pin, one more if untraced. */
  readonly terminals: Int32Array;
  /** By the pin's number: the bit of `LIES` that its terminal puts on a net; 0: none. */
  readonly bits: Int32Array;
  /** Pins that an engine's alternator feeds; its charge line only tells and excites. */
  readonly charged: readonly number[];
  readonly relayContacts: readonly CommandedContact[];
  readonly inlets: readonly Inlet[];
}

/** The pin at a place of the list of terminals. */
export const terminalPin = (entry: number): number => entry >> 1;
export const isUntraced = (entry: number): boolean => (entry & 1) === 1;

const BITS: Readonly<Partial<Record<Terminal, number>>> = {
  "battery-plus": LIES.batteryPlus,
  "battery-minus": LIES.batteryMinus,
  chassis: LIES.chassis,
  module: LIES.module,
  "charge-signal": LIES.chargeSignal,
  "page-end": LIES.pageEnd,
};

/** `size`: one more than the highest pin number. In one loop: a machine has thousands of parts. */
export function rosterOf(members: readonly Member[], size: number): Roster {
  const untraced = untracedPins(members);
  const pins = new Int32Array(size).fill(-1);
  const bits = new Int32Array(size);
  const modules: Member[] = [];
  const batteries: Member[] = [];
  const protections: Member[] = [];
  const loaded: Member[] = [];
  const terminals: number[] = [];
  const charged: number[] = [];
  const relayContacts: CommandedContact[] = [];
  const inlets: Inlet[] = [];
  let pinCount = 0;
  for (const member of members) {
    const { firstPin } = member;
    const end = firstPin + member.pins.length;
    for (let pin = firstPin; pin < end; pin++) pins[pin] = pin;
    pinCount += end - firstPin;
    for (const { pin, terminal } of member.terminals) {
      terminals.push(2 * pin + (untraced.has(pin) ? 1 : 0));
      bits[pin] = BITS[terminal] ?? 0;
    }
    if (member.kind === "module") modules.push(member);
    else if (member.kind === "battery") batteries.push(member);
    if (member.isProtection) protections.push(member);
    if (member.loads.length > 0) loaded.push(member);
    for (const contact of member.relayContacts) relayContacts.push(contact);
    for (const inlet of member.inlets) inlets.push(inlet);
    if (!member.isCharger) continue;
    for (const { a, passes } of member.elements)
      if (passes === PASSES.charger && bits[a] !== LIES.chargeSignal) charged.push(a);
  }
  return {
    members,
    modules,
    batteries,
    protections,
    loaded,
    pins,
    pinCount,
    joins: unseenJoins(members),
    terminals: new Int32Array(terminals),
    bits,
    charged,
    relayContacts,
    inlets,
  };
}

function unseenJoins(members: readonly Member[]): Int32Array {
  const firstWith = new Map<string, number>();
  const joins: number[] = [];
  for (const { joinKey, firstPin } of members) {
    if (joinKey === null) continue;
    const first = firstWith.get(joinKey);
    if (first === undefined) firstWith.set(joinKey, firstPin);
    else joins.push(first, firstPin);
  }
  return new Int32Array(joins);
}

/** Page ends that have no partner and whose beyond the user has not named. */
function untracedPins(members: readonly Member[]): ReadonlySet<number> {
  const counts = new Map<string, number>();
  for (const { page } of members) {
    if (page !== null) counts.set(page, (counts.get(page) ?? 0) + 1);
  }
  const untraced = new Set<number>();
  for (const { page, part, firstPin } of members) {
    if (page === null || part.kind !== "offpage" || part.is !== undefined) continue;
    if (page === "" || counts.get(page) === 1) untraced.add(firstPin);
  }
  return untraced;
}
