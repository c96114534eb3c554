import { InStep } from "../../base/index.ts";
import type { Id, PinRef, Wire } from "../../job/index.ts";
import type { Circuit } from "../machine-circuit.ts";
import { CELLS, compareCells, type Linked } from "./cells.ts";
import { ElementTable } from "./element-table.ts";
import { findFacts, type Tables } from "./facts.ts";
import { joinUp, type MemberWire } from "./joined.ts";
import { isAlike } from "./likeness.ts";
import { createMember, type Member } from "./member.ts";
import { PinSearch } from "./pin-search.ts";
import { relaysInRings } from "./relay-rings.ts";
import { rootwardWays } from "./rootward.ts";
import { type Roster, rosterOf } from "./roster.ts";
import { waysBack } from "./ways-back.ts";

/** Numbers of parts that are gone may be as many as this for each one in use, before all are given anew. */
const MOST_WASTE = 2;

interface HeldWire extends MemberWire {
  readonly wire: Wire;
}

const idOfMember = ({ part }: Member): Id => part.id;
const idOfWire = ({ wire }: HeldWire): Id => wire.id;

/**
 * The circuit of one machine, kept in step with the drawing edit by edit. What an edit does not
 * touch keeps its numbers, so that `holds` tells which answers still stand (see cells.ts).
 */
export class LinkedNetwork implements Tables {
  /** Counts the states that led current differently; where a part lies makes no new one. */
  revision = 0;
  memberOfPin: Member[] = [];
  memberOfElement: Member[] = [];
  /** By the wire's number. */
  readonly wireOf: Wire[] = [];
  /** By part, as they are now. */
  readonly members = new Map<Id, Member>();
  /** What of the parts the wires have no say in, as they are now. */
  roster: Roster = rosterOf([], 0);
  /** The scratch space of searches from pin to pin. */
  readonly pins = new PinSearch();
  /** By the pin's number: 1 where `pin` finds it. */
  private isThere = new Uint8Array(0);
  private elements = new ElementTable();
  private wires: readonly HeldWire[] = [];
  /** Those that are gone too: a wire that comes back between the same pins is the same one. */
  private readonly wireById = new Map<Id, HeldWire>();
  private circuit: Circuit = { parts: [], wires: [] };
  private systemVoltage = Number.NaN;
  private state: Linked | null = null;
  private stamps = new Int32Array(0);
  private marks = new Int32Array(0);
  private questions = 0;

  get linked(): Linked {
    if (!this.state) throw new Error("the network has no circuit yet");
    return this.state;
  }

  /** Whether the facts in all of these cells are still those of a revision. */
  holds(cells: ArrayLike<number>, revision: number): boolean {
    for (let at = 0; at < cells.length; at++) {
      // A cell of before the numbers were given anew may not be there at all.
      if (!((this.stamps[cells[at] as number] as number) <= revision)) return false;
    }
    return true;
  }

  /** Calls `note` for each cell that is handed in, once. */
  noter(note: (cell: number) => void): (index: number, cell: number) => void {
    const question = ++this.questions;
    const { marks } = this;
    return (index, cell) => {
      const at = index * CELLS + cell;
      if (marks[at] === question) return;
      marks[at] = question;
      note(at);
    };
  }

  /** The same for one cell. */
  isSameSince(revision: number, index: number, cell: number): boolean {
    return (this.stamps[index * CELLS + cell] as number) <= revision;
  }

  /** Takes the circuit as it is now; says whether anything leads current differently from before. */
  update(circuit: Circuit, systemVoltage: number): boolean {
    if (systemVoltage !== this.systemVoltage || this.isWasteful()) this.forget();
    this.systemVoltage = systemVoltage;
    const isSame =
      this.state !== null &&
      circuit.parts === this.circuit.parts &&
      circuit.wires === this.circuit.wires;
    if (isSame) return false;
    const movedParts = this.takeParts(circuit);
    const movedWires = this.takeWires(circuit.wires, movedParts);
    this.circuit = circuit;
    if (this.state && !movedParts && !movedWires) return false;
    this.link();
    return true;
  }

  private isWasteful(): boolean {
    return this.memberOfPin.length > (1 + MOST_WASTE) * this.roster.pinCount + 1000;
  }

  /** Numbers start anew, and no answer holds any longer. */
  private forget(): void {
    this.memberOfPin = [];
    this.memberOfElement = [];
    this.elements = new ElementTable();
    this.wireOf.length = 0;
    this.wireById.clear();
    this.members.clear();
    this.roster = rosterOf([], 0);
    this.wires = [];
    this.circuit = { parts: [], wires: [] };
    this.state = null;
  }

  /** Whether any part came, went, changed in a way that matters or has another place in the order. */
  private takeParts({ parts }: Circuit): boolean {
    if (parts === this.circuit.parts) return false;
    const before = this.roster.members;
    let moved = parts.length !== before.length;
    const old = new InStep(before, idOfMember, (id) => this.members.get(id));
    const order = parts.map((part, index) => {
      const known = old.find(part.id);
      if (known && isAlike(known.part, part)) {
        known.part = part;
        if (known !== before[index]) moved = true;
        return known;
      }
      moved = true;
      return this.number(part);
    });
    if (moved) {
      this.members.clear();
      for (const member of order) this.members.set(member.part.id, member);
      this.isThere = new Uint8Array(this.memberOfPin.length);
      for (const { firstPin, pins } of this.members.values())
        this.isThere.fill(1, firstPin, firstPin + pins.length);
      this.roster = rosterOf(order, this.memberOfPin.length);
      this.elements.arrange(order);
    }
    return moved;
  }

  private number(part: Circuit["parts"][number]): Member {
    const member = createMember(
      part,
      this.systemVoltage,
      this.memberOfPin.length,
      this.memberOfElement.length,
    );
    for (const _ of member.pins) this.memberOfPin.push(member);
    for (const element of member.elements) {
      this.memberOfElement.push(member);
      this.elements.add(element);
    }
    return member;
  }

  /** Whether any wire came, went, has other ends or another place in the order. */
  private takeWires(wires: readonly Wire[], movedParts: boolean): boolean {
    if (wires === this.circuit.wires && !movedParts) return false;
    const before = this.wires;
    const held: HeldWire[] = [];
    const old = new InStep(before, idOfWire, (id) => this.wireById.get(id));
    for (const wire of wires) {
      const known = old.find(wire.id);
      // One that was gone may have ended at a part that is another member since.
      const isKept = known?.wire === wire && this.isThere[known.from] && this.isThere[known.to];
      const one = isKept ? known : this.hold(wire);
      if (one) held.push(one);
    }
    const moved =
      held.length !== before.length ||
      held.some((one, index) => one.number !== before[index]?.number);
    this.wires = held;
    return moved;
  }

  /** The wire between its pins' numbers, under its old number where it still has the same ends. */
  private hold(wire: Wire): HeldWire | null {
    const from = this.pin(wire.from);
    const to = this.pin(wire.to);
    if (from === undefined || to === undefined) return null;
    const known = this.wireById.get(wire.id);
    const same = known?.from === from && known.to === to;
    const number = same ? known.number : this.wireOf.length;
    this.wireOf[number] = wire;
    const held: HeldWire = { wire, from, to, number };
    this.wireById.set(wire.id, held);
    return held;
  }

  /** The number of a pin; undefined for one that no part has. */
  pin(ref: PinRef): number | undefined {
    const number = this.members.get(ref.slice(0, ref.indexOf(":")))?.numberOf(ref) ?? -1;
    return number < 0 ? undefined : number;
  }

  ref(pin: number): PinRef {
    const member = this.memberOfPin[pin] as Member;
    return member.pins[pin - member.firstPin] as PinRef;
  }

  /** Wires drawn to a pin, by its number, in the order of the drawing. */
  wiresAt(pin: number): readonly Wire[] {
    const { start, list } = this.linked.joined.hops;
    const wires: Wire[] = [];
    for (let at = start[pin] as number; at < (start[pin + 1] as number); at += 2) {
      const wire = this.wireOf[list[at + 1] as number];
      if (wire) wires.push(wire);
    }
    return wires;
  }

  private link(): void {
    const joined = joinUp(this.roster, this.elements, this.wires);
    const facts = findFacts(joined, this);
    const now: Linked = {
      joined,
      facts,
      rootwardIn: rootwardWays(joined, facts, "in"),
      rootwardOut: rootwardWays(joined, facts, "out"),
      back: waysBack(joined, facts),
      rings: relaysInRings(joined, facts),
    };
    const { revision } = this;
    this.revision = revision + 1;
    const before = this.state;
    const needed = joined.size * CELLS;
    if (!before) {
      this.stamps = new Int32Array(needed).fill(this.revision);
      this.marks = new Int32Array(needed);
    } else {
      if (this.stamps.length < needed) {
        const longer = new Int32Array(2 * needed).fill(this.revision);
        longer.set(this.stamps);
        this.stamps = longer;
        this.marks = new Int32Array(longer.length);
      }
      compareCells(before, now, (index, cell) => {
        this.stamps[index * CELLS + cell] = this.revision;
      });
    }
    this.state = now;
  }
}
