import type { Id, Part, PinRef } from "../../job/index.ts";
import type { Terminal } from "../kinds/index.ts";
import type { NetId, Way } from "../nets.ts";
import { CELL } from "./cells.ts";
import type { LinkedNetwork } from "./linked-network.ts";
import type { Lists } from "./lists.ts";
import type { Member } from "./member.ts";
import { isUntraced, terminalPin } from "./roster.ts";

/** A pin that is more than the end of an element. */
export interface NetTerminal {
  readonly pin: PinRef;
  readonly part: Part;
  readonly terminal: Terminal;
  readonly untraced: boolean;
}

/** What is fed only while the engine runs, or by a switch beyond the page. */
export interface SometimesFed {
  readonly pin: PinRef;
  /** The page end beyond which it is switched; null: by the engine. */
  readonly beyond: Id | null;
}

interface Made<T> {
  readonly at: number;
  readonly value: T;
}

/** What lies at a net, as objects, made when somebody asks and kept while it is the same. */
export class NetObjects {
  private readonly network: LinkedNetwork;
  private readonly made: (Made<unknown> | undefined)[][] = [];

  constructor(network: LinkedNetwork) {
    this.network = network;
  }

  private keep<T>(cell: number, net: NetId, make: () => T): T {
    this.made[cell] ??= [];
    const row = this.made[cell] as (Made<T> | undefined)[];
    const known = row[net];
    if (known && this.network.isSameSince(known.at, net, cell)) return known.value;
    const value = make();
    row[net] = { at: this.network.revision, value };
    return value;
  }

  /** Elements that leave the net, as seen from it, in the order of the drawing. */
  ways(net: NetId): readonly Way[] {
    return this.keep(CELL.ways, net, () => {
      const { ways, netOf } = this.network.linked.joined;
      return Array.from(slice(ways, net), (way): Way => {
        const member = this.network.memberOfElement[way >> 1] as Member;
        const held = member.elements[(way >> 1) - member.firstElement];
        if (!held) throw new Error(`no element ${way >> 1}`);
        const forward = (way & 1) === 0;
        const [near, far] = forward ? [held.a, held.b] : [held.b, held.a];
        return {
          element: held.element,
          from: member.pins[near - member.firstPin] as PinRef,
          to: member.pins[far - member.firstPin] as PinRef,
          far: netOf[far] as number,
          forward,
        };
      });
    });
  }

  /** Of the ways, those that lead towards a source (in) or ground (out), or sideways. */
  rootward(net: NetId, flow: "in" | "out"): readonly Way[] {
    const cell = flow === "in" ? CELL.rootwardIn : CELL.rootwardOut;
    return this.keep(cell, net, () => {
      const { joined, rootwardIn, rootwardOut } = this.network.linked;
      const allowed = flow === "in" ? rootwardIn : rootwardOut;
      const ways = slice(joined.ways, net);
      return this.ways(net).filter((_, index) => allowed[ways[index] as number] === 1);
    });
  }

  /** In the order of the drawing. */
  terminals(net: NetId): readonly NetTerminal[] {
    return this.keep(CELL.terminals, net, () => {
      return Array.from(slice(this.network.linked.joined.terminals, net), (entry): NetTerminal => {
        const pin = terminalPin(entry);
        const member = this.network.memberOfPin[pin] as Member;
        const found = member.terminals.find((one) => one.pin === pin);
        if (!found) throw new Error(`no terminal at pin ${pin}`);
        const ref = this.network.ref(pin);
        const untraced = isUntraced(entry);
        return { pin: ref, part: member.part, terminal: found.terminal, untraced };
      });
    });
  }

  /** What feeds the net only sometimes. */
  rails(net: NetId): readonly SometimesFed[] {
    return this.keep(CELL.rails, net, () => {
      if (!this.network.linked.facts.mayFeed[net]) return [];
      const terminals = this.terminals(net);
      const beyond = terminals.flatMap(({ pin, part, terminal, untraced }) => {
        const isOne = terminal === "page-end" && !untraced && part.kind === "offpage";
        return isOne && part.is === "switched-supply" ? [{ pin, beyond: part.id }] : [];
      });
      const charged = this.ways(net).flatMap(({ element: { law }, forward, from }) => {
        const isCharger = forward && law.is === "source" && law.live === "engine-running";
        // An alternator's charge line only tells and excites.
        const tells = terminals.some((one) => one.pin === from && one.terminal === "charge-signal");
        return isCharger && !tells ? [{ pin: from, beyond: null }] : [];
      });
      return [...beyond, ...charged];
    });
  }
}

const slice = ({ start, list }: Lists, index: number) =>
  list.subarray(start[index] as number, start[index + 1] as number);
