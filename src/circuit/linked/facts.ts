import type { RoleName } from "../../job/index.ts";
import type { Joined } from "./joined.ts";
import { LIES } from "./lies.ts";
import { type Member, PASSES } from "./member.ts";
import { isUntraced, terminalPin } from "./roster.ts";
import type { Space } from "./space.ts";

/** What each net is whatever any switch does, by its number. */
export interface NetFacts {
  /** The pin that feeds it (or grounds it) always; −1: none. */
  readonly source: Int32Array;
  readonly ground: Int32Array;
  /** 1: fed, or grounded, at least in some state of the machine. */
  readonly mayFeed: Uint8Array;
  readonly mayGround: Uint8Array;
  readonly lies: Int32Array;
  /**
   * Minus terminals that stand on another battery's plus, over wires, fuses or contacts alone:
   * between batteries in series the point is live, not ground.
   */
  readonly raised: ReadonlySet<number>;
}

/** Tables that find a pin's part and an element's ends by their numbers. */
export interface Tables {
  readonly memberOfPin: readonly Member[];
  readonly memberOfElement: readonly Member[];
}

/** `kept`: where they lie. */
export function findFacts(joined: Joined, tables: Tables, kept: Space): NetFacts {
  const { size, netOf, terminals, pinCount, roster } = joined;
  const raised = raisedMinuses(joined, tables);
  const source = kept.unset(size).fill(-1);
  const ground = kept.unset(size).fill(-1);
  const mayFeed = kept.flags(size);
  const mayGround = kept.flags(size);
  const lies = kept.zeros(size);
  const charged = new Set(roster.charged.map((pin) => netOf[pin] as number));
  for (let net = 0; net < size; net++) {
    if (netOf[net] !== net) continue;
    let bits: number = pinCount[net] === 1 ? LIES.alone : 0;
    let plus = -1;
    let minus = -1;
    let chassis = -1;
    let supply = -1;
    let beyondGround = -1;
    let isSometimesFed = charged.has(net);
    for (let at = terminals.start[net] as number; at < (terminals.start[net + 1] as number); at++) {
      const entry = terminals.list[at] as number;
      const pin = terminalPin(entry);
      const bit = roster.bits[pin] as number;
      bits |= bit;
      if (bit === LIES.batteryPlus && plus < 0) plus = pin;
      else if (bit === LIES.batteryMinus && minus < 0 && !raised.has(pin)) minus = pin;
      else if (bit === LIES.chassis && chassis < 0) chassis = pin;
      else if (bit === LIES.pageEnd) {
        if (isUntraced(entry)) bits |= LIES.untraced;
        const is = roleBeyond(tables.memberOfPin[pin] as Member);
        if (is === "supply" && supply < 0) supply = pin;
        else if (is === "ground" && beyondGround < 0) beyondGround = pin;
        else if (is === "switched-supply") isSometimesFed = true;
      }
    }
    source[net] = plus >= 0 ? plus : supply;
    const fed = (source[net] as number) >= 0;
    // Where plus itself lies on chassis, chassis is the feed; it takes a minus there to make a short.
    const grounded = minus >= 0 ? minus : fed ? -1 : chassis;
    ground[net] = grounded >= 0 ? grounded : beyondGround;
    mayFeed[net] = fed || isSometimesFed ? 1 : 0;
    mayGround[net] = (ground[net] as number) >= 0 ? 1 : 0;
    lies[net] = isSometimesFed ? bits | LIES.sometimesFed : bits;
  }
  return { source, ground, mayFeed, mayGround, lies, raised };
}

/** What the user says lies beyond a page end; null: nothing was said. */
const roleBeyond = ({ part }: Member): RoleName | null =>
  (part.kind === "offpage" && part.is) || null;

function raisedMinuses(joined: Joined, tables: Tables): ReadonlySet<number> {
  const raised = new Set<number>();
  const { batteries } = joined.roster;
  if (batteries.length < 2) return raised;
  for (const battery of batteries) {
    for (const { pin, terminal } of battery.terminals) {
      if (terminal === "battery-minus" && standsOnAnotherPlus(joined, tables, pin, battery))
        raised.add(pin);
    }
  }
  return raised;
}

function standsOnAnotherPlus(
  { netOf, terminals, ways, roster }: Joined,
  { memberOfPin, memberOfElement }: Tables,
  minus: number,
  battery: Member,
): boolean {
  const start = netOf[minus] as number;
  const seen = new Set<number>([start]);
  for (const net of seen) {
    let stops = false;
    for (let at = terminals.start[net] as number; at < (terminals.start[net + 1] as number); at++) {
      const pin = terminalPin(terminals.list[at] as number);
      const bit = roster.bits[pin];
      if (bit === LIES.batteryPlus && memberOfPin[pin] !== battery) return true;
      if (bit === LIES.batteryPlus || bit === LIES.chassis) stops = true;
    }
    if (stops) continue;
    for (let at = ways.start[net] as number; at < (ways.start[net + 1] as number); at++) {
      const way = ways.list[at] as number;
      const member = memberOfElement[way >> 1] as Member;
      const one = member.elements[(way >> 1) - member.firstElement];
      if (one?.passes !== PASSES.either && one?.passes !== PASSES.relay) continue;
      seen.add(netOf[way & 1 ? one.a : one.b] as number);
    }
  }
  return false;
}
