import { stretchOfChange } from "../../base/index.ts";
import type { Id, PinRef, Wire } from "../../job/index.ts";

/** The wires in columns, in the order of the drawing. */
export interface WireColumns {
  /** Each wire's number; −1 for one that has an end at no pin. */
  readonly numbers: Int32Array;
  /** Pins of either end; of one without a number they mean nothing. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly count: number;
}

/** How a wire lay when it was looked at last. */
interface Lie {
  readonly number: number;
  readonly from: number;
  readonly to: number;
}

/** How the wires find their pins. */
interface Pins {
  /** The number of a pin; undefined for one that no part has. */
  pin(ref: PinRef): number | undefined;
  isThere(pin: number): boolean;
}

/** The wires by their numbers, which they keep for as long as they have the same ends. */
export class WireTable implements WireColumns {
  numbers = new Int32Array(64);
  from = new Int32Array(64);
  to = new Int32Array(64);
  count = 0;
  /** By the wire's number. */
  readonly wireOf: Wire[] = [];
  private wires: readonly Wire[] = [];
  /** Those that are gone too: a wire that comes back between the same pins is the same one. */
  private readonly lies = new Map<Id, Lie>();

  /**
   * Takes the wires as they are now; says whether any came, went, has other ends or another place in
   * the order. Where no part came or went (`movedParts`), only what the list has new is looked at.
   */
  take(wires: readonly Wire[], pins: Pins, movedParts: boolean): boolean {
    const { from, before, now } = stretchOfChange(this.wires, wires);
    const added = now - before;
    const old = this.numbers.slice(from, before);
    this.shift(before, added);
    this.wires = wires;
    let moved = added !== 0;
    for (let at = from; at < now; at++) {
      this.lay(at, wires[at] as Wire, pins);
      if (this.numbers[at] !== old[at - from]) moved = true;
    }
    if (!movedParts) return moved;
    for (let at = 0; at < this.count; at++) {
      const isTaken = at >= from && at < now;
      if (isTaken || this.isLaid(at, pins)) continue;
      const number = this.numbers[at];
      this.lay(at, wires[at] as Wire, pins);
      if (this.numbers[at] !== number) moved = true;
    }
    return moved;
  }

  /** Makes or takes away room before the rows from a place on. */
  private shift(place: number, by: number): void {
    const { count } = this;
    this.count += by;
    if (by === 0) return;
    while (this.count > this.numbers.length) this.grow();
    for (const column of [this.numbers, this.from, this.to])
      column.copyWithin(place + by, place, count);
  }

  private isLaid(at: number, pins: Pins): boolean {
    const isWhole = (this.numbers[at] as number) >= 0;
    return isWhole && pins.isThere(this.from[at] as number) && pins.isThere(this.to[at] as number);
  }

  private lay(at: number, wire: Wire, pins: Pins): void {
    const { number, from, to } = this.lieOf(wire, pins) ?? NOWHERE;
    this.numbers[at] = number;
    this.from[at] = from;
    this.to[at] = to;
  }

  /** Under its old number where it still has the same ends; null where it has an end at no pin. */
  private lieOf(wire: Wire, pins: Pins): Lie | null {
    const known = this.lies.get(wire.id);
    // One that was gone may have ended at a part that is another member since.
    const isSame =
      known !== undefined &&
      this.wireOf[known.number] === wire &&
      pins.isThere(known.from) &&
      pins.isThere(known.to);
    if (isSame) return known;
    const from = pins.pin(wire.from);
    const to = pins.pin(wire.to);
    if (from === undefined || to === undefined) return null;
    const hasSameEnds = known?.from === from && known.to === to;
    const lie = hasSameEnds ? known : { number: this.wireOf.length, from, to };
    this.wireOf[lie.number] = wire;
    this.lies.set(wire.id, lie);
    return lie;
  }

  private grow(): void {
    const longer = (old: Int32Array) => {
      const column = new Int32Array(2 * old.length);
      column.set(old);
      return column;
    };
    this.numbers = longer(this.numbers);
    this.from = longer(this.from);
    this.to = longer(this.to);
  }
}

const NOWHERE: Lie = { number: -1, from: -1, to: -1 };
