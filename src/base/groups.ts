/** Things by number that come to belong together. */
export class Groups {
  readonly #parent: Int32Array;

  /** `parent`: an array of `count` numbers to keep them in, whatever stands in it. */
  constructor(count: number, parent: Int32Array = new Int32Array(count)) {
    this.#parent = parent;
    for (let one = 0; one < count; one++) parent[one] = one;
  }

  /** The one that stands for all that belong together with this. */
  of(one: number): number {
    const parent = this.#parent;
    let root = one;
    while (parent[root] !== root) root = parent[root] as number;
    let walk = one;
    while (walk !== root) {
      const next = parent[walk] as number;
      parent[walk] = root;
      walk = next;
    }
    return root;
  }

  /** What stood for those of `b` stands for all of them now. */
  join(a: number, b: number): void {
    this.#parent[this.of(a)] = this.of(b);
  }
}
