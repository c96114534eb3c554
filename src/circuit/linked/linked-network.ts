import { InStep, stretchOfChange } from "../../base/index.ts";
import type { Id, PinRef, Wire } from "../../job/index.ts";
import type { Circuit } from "../machine-circuit.ts";
import { CELLS, compareCells, type Linked } from "./cells.ts";
import { ElementTable } from "./element-table.ts";
import { findFacts, type Tables } from "./facts.ts";
import { joinUp } from "./joined.ts";
import { isAlike } from "./likeness.ts";
import { createMember, type Member } from "./member.ts";
import { PinSearch } from "./pin-search.ts";
import { relaysInRings } from "./relay-rings.ts";
import { rootwardWays } from "./rootward.ts";
import { type Roster, rosterOf } from "./roster.ts";
import { Space } from "./space.ts";
import { waysBack } from "./ways-back.ts";
import { WireTable } from "./wire-table.ts";

/** Numbers of parts that are gone may be as many as this for each one in use, before all are given anew. */
const MOST_WASTE = 2;

const idOfMember = ({ part }: Member): Id => part.id;

/**
 * The circuit of one machine, kept in step with the drawing edit by edit. What an edit does not
 * touch keeps its numbers, so that `holds` tells which answers still stand (see cells.ts).
 */
export class LinkedNetwork implements Tables {
  /** Counts the states that led current differently; where a part lies makes no new one. */
  revision = 0;
  memberOfPin: Member[] = [];
  memberOfElement: Member[] = [];
  /** By part, as they are now. */
  readonly members = new Map<Id, Member>();
  /** What of the parts the wires have no say in, as they are now. */
  roster: Roster = rosterOf([], 0);
  /** The scratch space of searches from pin to pin. */
  readonly pins = new PinSearch();
  private elements = new ElementTable();
  private wires = new WireTable();
  private circuit: Circuit = { parts: [], wires: [] };
  private systemVoltage = Number.NaN;
  private state: Linked | null = null;
  private stamps = new Int32Array(0);
  private marks = new Int32Array(0);
  private questions = 0;
  /** Where the state of now lies, where that of before did, and what else joining up needs. */
  private kept = new Space();
  private spare = new Space();
  private readonly scratch = new Space();

  /** By the wire's number. */
  get wireOf(): readonly Wire[] {
    return this.wires.wireOf;
  }

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
    const movedWires = this.wires.take(circuit.wires, this, movedParts);
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
    this.wires = new WireTable();
    this.members.clear();
    this.roster = rosterOf([], 0);
    this.circuit = { parts: [], wires: [] };
    this.state = null;
  }

  /** Whether any part came, went, changed in a way that matters or has another place in the order. */
  private takeParts({ parts }: Circuit): boolean {
    if (parts === this.circuit.parts) return false;
    const before = this.roster.members;
    // What lies before the first part that differs and behind the last one is not looked at.
    const stretch = stretchOfChange(this.circuit.parts, parts);
    const { from } = stretch;
    const gone = before.slice(from, stretch.before);
    const old = new InStep(gone, idOfMember, (id) => this.members.get(id));
    let moved = stretch.before !== stretch.now;
    const come = parts.slice(from, stretch.now).map((part, index) => {
      const known = old.find(part.id);
      if (known && isAlike(known.part, part)) {
        known.part = part;
        if (known !== gone[index]) moved = true;
        return known;
      }
      moved = true;
      return this.number(part);
    });
    if (moved) {
      for (const { part } of gone) this.members.delete(part.id);
      for (const member of come) this.members.set(member.part.id, member);
      const order = [...before.slice(0, from), ...come, ...before.slice(stretch.before)];
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

  /** The number of a pin; undefined for one that no part has. */
  pin(ref: PinRef): number | undefined {
    const number = this.members.get(ref.slice(0, ref.indexOf(":")))?.numberOf(ref) ?? -1;
    return number < 0 ? undefined : number;
  }

  /** Whether a part has the pin of this number now. */
  isThere(pin: number): boolean {
    return (this.roster.pins[pin] as number) >= 0;
  }

  ref(pin: number): PinRef {
    const member = this.memberOfPin[pin] as Member;
    return member.pins[pin - member.firstPin] as PinRef;
  }

  /** Whether a part has the pin of this number now, under this name. */
  isAt(pin: number, ref: PinRef): boolean {
    return this.isThere(pin) && this.ref(pin) === ref;
  }

  /** Whether the wires drawn to a pin are these, in this order; asked of thousands, it makes nothing. */
  hasWiresAt(pin: number | undefined, wires: readonly Wire[]): boolean {
    if (pin === undefined) return wires.length === 0;
    const { start, list } = this.linked.joined.hops;
    let count = 0;
    for (let at = start[pin] as number; at < (start[pin + 1] as number); at += 2) {
      const number = list[at + 1] as number;
      if (number >= 0 && this.wireOf[number] !== wires[count++]) return false;
    }
    return count === wires.length;
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
    const { spare: kept, scratch } = this;
    this.spare = this.kept;
    this.kept = kept;
    kept.clear();
    scratch.clear();
    const joined = joinUp(this.roster, this.elements, this.wires, kept, scratch);
    const facts = findFacts(joined, this, kept);
    const now: Linked = {
      joined,
      facts,
      rootwardIn: rootwardWays(joined, facts, "in", kept, scratch),
      rootwardOut: rootwardWays(joined, facts, "out", kept, scratch),
      back: waysBack(joined, facts, kept, scratch),
      rings: relaysInRings(joined, facts, kept, scratch),
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
