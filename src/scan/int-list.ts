/** Whole numbers in one growing block of memory: lists of many pixels, without an object for each. */
export class IntList {
  length = 0;
  private data: Int32Array<ArrayBuffer>;

  constructor(room = 1024) {
    this.data = new Int32Array(room);
  }

  at(n: number): number {
    return this.data[n] as number;
  }

  push(value: number): void {
    if (this.length === this.data.length) {
      const more = new Int32Array(2 * this.length);
      more.set(this.data);
      this.data = more;
    }
    this.data[this.length++] = value;
  }

  /** Takes the last one off; the list must not be empty. */
  pop(): number {
    return this.data[--this.length] as number;
  }

  clear(): void {
    this.length = 0;
  }

  /** A copy as long as the list. */
  values(): Int32Array {
    return this.data.slice(0, this.length);
  }
}
