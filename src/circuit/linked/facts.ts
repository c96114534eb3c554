import type { RoleName } from "../../job/index.ts";
import type { Joined } from "./joined.ts";
import { LIES } from "./lies.ts";
import { type Member, PASSES } from "./member.ts";
import { isUntraced, terminalPin } from "./roster.ts";

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

export function findFacts(joined: Joined, tables: Tables): NetFacts {
  const { size, netOf, terminals, pinCount, roster } = joined;
  const raised = raisedMinuses(joined, tables);
  const source = new Int32Array(size).fill(-1);
  const ground = new Int32Array(size).fill(-1);
  const mayFeed = new Uint8Array(size);
  const mayGround = new Uint8Array(size);
  const lies = new Int32Array(size);
  const chargers = chargedNets(joined);
  for (let net = 0; net < size; net++) {
    if (netOf[net] !== net) continue;
    let bits: number = pinCount[net] === 1 ? LIES.alone : 0;
    let plus = -1;
    let minus = -1;
    let chassis = -1;
    let beyond = { supply: -1, ground: -1, switched: -1 };
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
        else beyond = withBeyond(beyond, tables.memberOfPin[pin] as Member, pin);
      }
    }
    source[net] = plus >= 0 ? plus : beyond.supply;
    const fed = (source[net] as number) >= 0;
    // Where plus itself lies on chassis, chassis is the feed; it takes a minus there to make a short.
    const grounded = minus >= 0 ? minus : fed ? -1 : chassis;
    ground[net] = grounded >= 0 ? grounded : beyond.ground;
    const sometimes = chargers.has(net) || beyond.switched >= 0;
    mayFeed[net] = fed || sometimes ? 1 : 0;
    mayGround[net] = (ground[net] as number) >= 0 ? 1 : 0;
    lies[net] = sometimes ? bits | LIES.sometimesFed : bits;
  }
  return { source, ground, mayFeed, mayGround, lies, raised };
}

function withBeyond(
  known: { supply: number; ground: number; switched: number },
  { part }: Member,
  pin: number,
): typeof known {
  const is: RoleName | undefined = part.kind === "offpage" ? part.is : undefined;
  if (is === "supply" && known.supply < 0) return { ...known, supply: pin };
  if (is === "ground" && known.ground < 0) return { ...known, ground: pin };
  if (is === "switched-supply" && known.switched < 0) return { ...known, switched: pin };
  return known;
}

/** Nets that an engine's alternator feeds; its charge line only tells and excites. */
function chargedNets({ netOf, elements, roster }: Joined): ReadonlySet<number> {
  const nets = new Set<number>();
  for (const number of elements.order) {
    if (elements.passes[number] !== PASSES.charger) continue;
    const pin = elements.a[number] as number;
    if (roster.bits[pin] !== LIES.chargeSignal) nets.add(netOf[pin] as number);
  }
  return nets;
}

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
