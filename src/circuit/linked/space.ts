/**
 * Arrays of numbers that are used time and again: handed out in the order in which they are asked
 * for, and all of them free once more after `clear`. Else each edit of a large drawing would leave
 * megabytes behind, and collecting them would take longer than joining up.
 */
export class Space {
  private readonly buffers: ArrayBuffer[] = [];
  private handedOut = 0;

  clear(): void {
    this.handedOut = 0;
  }

  /** What stands in it is whatever was left there: for one that is written before it is read. */
  unset(length: number): Int32Array {
    return new Int32Array(this.buffer(4 * length), 0, length);
  }

  zeros(length: number): Int32Array {
    return this.unset(length).fill(0);
  }

  /** All zero. */
  flags(length: number): Uint8Array {
    return new Uint8Array(this.buffer(length), 0, length).fill(0);
  }

  private buffer(bytes: number): ArrayBuffer {
    const place = this.handedOut++;
    const known = this.buffers[place];
    if (known && known.byteLength >= bytes) return known;
    // An edit that adds a little more must not need another one.
    const made = new ArrayBuffer(bytes + (bytes >> 2));
    this.buffers[place] = made;
    return made;
  }
}
