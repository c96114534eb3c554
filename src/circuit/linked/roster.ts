import type { Terminal } from "../kinds/index.ts";
import { LIES } from "./lies.ts";
import type { Member } from "./member.ts";

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
  /** Those with a coil, and those that pass on what feeds them elsewhere. */
  readonly commanded: readonly Member[];
  /** By the pin's number: the same number; −1 where there is no such pin any more. */
  readonly pins: Int32Array;
  readonly pinCount: number;
  /** Pins that are one point without a wire, two by two: each with the first of its kind. */
  readonly joins: readonly number[];
  /** Pins that are more than the end of an element: twice the pin, one more if untraced. */
  readonly terminals: Int32Array;
  /** By the pin's number: the bit of `LIES` that its terminal puts on a net; 0: none. */
  readonly bits: Int32Array;
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

/** `size`: one more than the highest pin number. */
export function rosterOf(members: readonly Member[], size: number): Roster {
  const untraced = untracedPins(members);
  const pins = new Int32Array(size).fill(-1);
  const bits = new Int32Array(size);
  const terminals: number[] = [];
  let pinCount = 0;
  for (const member of members) {
    const end = member.firstPin + member.pins.length;
    for (let pin = member.firstPin; pin < end; pin++) pins[pin] = pin;
    pinCount += member.pins.length;
    for (const { pin, terminal } of member.terminals) {
      terminals.push(2 * pin + (untraced.has(pin) ? 1 : 0));
      bits[pin] = BITS[terminal] ?? 0;
    }
  }
  return {
    members,
    modules: members.filter(({ part }) => part.kind === "module"),
    batteries: members.filter(({ part }) => part.kind === "battery"),
    protections: members.filter(({ elements }) => elements[0]?.element.law.is === "protection"),
    loaded: members.filter(({ loads }) => loads.length > 0),
    commanded: members.filter(({ coil, hasInlets }) => coil !== null || hasInlets),
    pins,
    pinCount,
    joins: unseenJoins(members),
    terminals: Int32Array.from(terminals),
    bits,
  };
}

function unseenJoins(members: readonly Member[]): readonly number[] {
  const firstWith = new Map<string, number>();
  const joins: number[] = [];
  for (const { joinKey, firstPin } of members) {
    if (joinKey === null) continue;
    const first = firstWith.get(joinKey);
    if (first === undefined) firstWith.set(joinKey, firstPin);
    else joins.push(first, firstPin);
  }
  return joins;
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
