import type { Joined } from "./joined.ts";

/** Searches over hops between pins, breadth first; one at a time, with the same scratch space. */
export class PinSearch {
  private came = new Int32Array(0);
  private over = new Int32Array(0);
  private mark = new Int32Array(0);
  private queue = new Int32Array(0);
  private searches = 0;

  /** Goes out from a pin until one will do: that one, or −1. `look` hears of each pin gone on from. */
  run(
    { hops, size }: Joined,
    start: number,
    isEnough: (pin: number) => boolean,
    look: (pin: number) => void,
  ): number {
    if (this.mark.length < size) {
      this.came = new Int32Array(size);
      this.over = new Int32Array(size);
      this.mark = new Int32Array(size);
      this.queue = new Int32Array(size);
    }
    const search = ++this.searches;
    let length = 0;
    this.mark[start] = search;
    this.queue[length++] = start;
    for (let head = 0; head < length; head++) {
      const pin = this.queue[head] as number;
      if (isEnough(pin)) return pin;
      look(pin);
      for (let at = hops.start[pin] as number; at < (hops.start[pin + 1] as number); at += 2) {
        const to = hops.list[at] as number;
        if (this.mark[to] === search) continue;
        this.mark[to] = search;
        this.came[to] = pin;
        this.over[to] = hops.list[at + 1] as number;
        this.queue[length++] = to;
      }
    }
    return -1;
  }

  /** The pin that the last search came to this one from. */
  from(pin: number): number {
    return this.came[pin] as number;
  }

  /** The number of the wire that it came over; −1 where no wire is seen. */
  wire(pin: number): number {
    return this.over[pin] as number;
  }
}
