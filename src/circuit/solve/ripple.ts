import { type Mesh, parentOf } from "./star-mesh.ts";

/** Nodes that feel a push, with their volts against their piece's reference. */
export interface Ripple {
  readonly nodes: readonly number[];
  readonly volts: readonly number[];
}

/** Amps pushed into a node; what is not taken out again leaves by the piece's reference. */
export type Push = readonly [node: number, amps: number];

/**
 * Who feels a push, without asking everybody. Up from the pushed nodes the volts are worked out as
 * for a whole solution. Any other node lies, by weights that add up to one, between the nodes of
 * its star: if all those feel less than `least`, so does it, and all that hang on it.
 */
export class Ripples {
  readonly #mesh: Mesh;
  readonly #amps: Float64Array;
  readonly #volts: Float64Array;
  /** Round in which a place was last met. */
  readonly #met: Int32Array;
  #round = 0;

  constructor(mesh: Mesh) {
    const count = mesh.sums.length;
    this.#mesh = mesh;
    this.#amps = new Float64Array(count);
    this.#volts = new Float64Array(count);
    this.#met = new Int32Array(count);
  }

  /** Volts of just these nodes. */
  at(pushes: readonly Push[], nodes: readonly number[]): readonly number[] {
    this.#round++;
    const pushed = this.#push(pushes);
    const passed = Array.from(pushed);
    for (const node of nodes) {
      let place = this.#mesh.plan.place[node] as number;
      while (place >= 0 && this.#met[place] !== this.#round) {
        this.#met[place] = this.#round;
        this.#amps[place] = 0;
        passed.push(place);
        place = parentOf(this.#mesh.plan.stars, place);
      }
    }
    const rising = Int32Array.from(passed).sort();
    for (let i = rising.length - 1; i >= 0; i--) {
      const place = rising[i] as number;
      this.#volts[place] = this.#voltsAt(place, this.#amps[place] as number);
    }
    return nodes.map((node) => this.#volts[this.#mesh.plan.place[node] as number] as number);
  }

  /** Every node that feels `least` volts or more, and some that feel less; the rest feel less. */
  from(pushes: readonly Push[], least: number): Ripple {
    this.#round++;
    const above = this.#push(pushes);
    const nodes: number[] = [];
    const volts: number[] = [];
    const waiting = new FromLast();
    const settle = (place: number, amps: number) => {
      const own = this.#voltsAt(place, amps);
      this.#volts[place] = own;
      nodes.push(this.#mesh.plan.nodeAt[place] as number);
      volts.push(own);
      if (Math.abs(own) < least) return;
      const { givers, owner } = this.#mesh.plan;
      const last = givers.starts[place + 1] as number;
      for (let i = givers.starts[place] as number; i < last; i++) {
        const giver = owner[givers.all[i] as number] as number;
        if (this.#met[giver] === this.#round) continue;
        this.#met[giver] = this.#round;
        waiting.add(giver);
      }
    };
    // from the last place to go to the first: those above a push, and those that hang on them
    let next = above.length - 1;
    for (;;) {
      const own = next >= 0 ? (above[next] as number) : -1;
      const hanging = waiting.last();
      if (own < 0 && hanging < 0) return { nodes, volts };
      if (own > hanging) {
        next--;
        settle(own, this.#amps[own] as number);
      } else {
        waiting.take();
        settle(hanging, 0);
      }
    }
  }

  /** Carries the amps up; returns the places that they pass, rising. */
  #push(pushes: readonly Push[]): Int32Array {
    const { plan, siemens, sums } = this.#mesh;
    const passed: number[] = [];
    for (const [node] of pushes) {
      let place = plan.place[node] as number;
      while (place >= 0 && this.#met[place] !== this.#round) {
        this.#met[place] = this.#round;
        this.#amps[place] = 0;
        passed.push(place);
        place = parentOf(plan.stars, place);
      }
    }
    for (const [node, amps] of pushes) {
      const place = plan.place[node] as number;
      this.#amps[place] = (this.#amps[place] as number) + amps;
    }
    const rising = Int32Array.from(passed).sort();
    for (const place of rising) {
      const total = sums[place] as number;
      const amps = this.#amps[place] as number;
      if (total === 0 || amps === 0) continue;
      const last = plan.stars.starts[place + 1] as number;
      for (let i = plan.stars.starts[place] as number; i < last; i++) {
        const far = plan.stars.all[i] as number;
        this.#amps[far] = (this.#amps[far] as number) + (amps / total) * (siemens[i] as number);
      }
    }
    return rising;
  }

  #voltsAt(place: number, amps: number): number {
    const { plan, siemens, sums } = this.#mesh;
    const total = sums[place] as number;
    if (total === 0) return 0;
    let sum = amps;
    const last = plan.stars.starts[place + 1] as number;
    for (let i = plan.stars.starts[place] as number; i < last; i++) {
      const far = plan.stars.all[i] as number;
      if (this.#met[far] === this.#round)
        sum += (siemens[i] as number) * (this.#volts[far] as number);
    }
    return sum / total;
  }
}

/** Numbers, of which the greatest is taken first (a binary heap). */
class FromLast {
  readonly #heap: number[] = [];

  last(): number {
    return this.#heap[0] ?? -1;
  }

  add(value: number): void {
    const heap = this.#heap;
    let at = heap.length;
    heap.push(value);
    while (at > 0) {
      const up = (at - 1) >> 1;
      const above = heap[up] as number;
      if (above >= value) break;
      heap[at] = above;
      at = up;
    }
    heap[at] = value;
  }

  take(): void {
    const heap = this.#heap;
    const moved = heap.pop();
    if (moved === undefined || heap.length === 0) return;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= heap.length) break;
      if (down + 1 < heap.length && (heap[down + 1] as number) > (heap[down] as number)) down++;
      if ((heap[down] as number) <= moved) break;
      heap[at] = heap[down] as number;
      at = down;
    }
    heap[at] = moved;
  }
}
