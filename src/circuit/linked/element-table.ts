import type { Member, MemberElement } from "./member.ts";

/** The elements of all members in columns, by their numbers; rows of members that are gone stay. */
export interface ElementColumns {
  /** Pins of either end. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** One of `PASSES`. */
  readonly passes: Uint8Array;
  /** Pins that feed it, where it passes on what feeds it; −1: none. */
  readonly inletPlus: Int32Array;
  readonly inletMinus: Int32Array;
  /** Numbers of the elements that are there now, in the order of the drawing. */
  readonly order: Int32Array;
  /** One more than the highest number given. */
  readonly count: number;
}

export class ElementTable implements ElementColumns {
  a = new Int32Array(64);
  b = new Int32Array(64);
  passes = new Uint8Array(64);
  inletPlus = new Int32Array(64);
  inletMinus = new Int32Array(64);
  order = new Int32Array(0);
  count = 0;

  add({ a, b, passes, inlets }: MemberElement): void {
    if (this.count === this.a.length) this.grow();
    const number = this.count++;
    this.a[number] = a;
    this.b[number] = b;
    this.passes[number] = passes;
    this.inletPlus[number] = inlets ? inlets[0] : -1;
    this.inletMinus[number] = inlets ? inlets[1] : -1;
  }

  /** Takes the members that are there now, in the order of the drawing. */
  arrange(members: readonly Member[]): void {
    let length = 0;
    for (const { elements } of members) length += elements.length;
    const order = new Int32Array(length);
    let at = 0;
    for (const { firstElement, elements } of members)
      for (let index = 0; index < elements.length; index++) order[at++] = firstElement + index;
    this.order = order;
  }

  private grow(): void {
    const longer = (old: Int32Array) => {
      const column = new Int32Array(2 * old.length);
      column.set(old);
      return column;
    };
    this.a = longer(this.a);
    this.b = longer(this.b);
    this.inletPlus = longer(this.inletPlus);
    this.inletMinus = longer(this.inletMinus);
    const passes = new Uint8Array(2 * this.passes.length);
    passes.set(this.passes);
    this.passes = passes;
  }
}
