/** Things by number that come to belong together. */
export class Groups {
  readonly #parent: Int32Array;

  constructor(count: number) {
    this.#parent = new Int32Array(count);
    for (let one = 0; one < count; one++) this.#parent[one] = one;
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

  join(a: number, b: number): void {
    this.#parent[this.of(a)] = this.of(b);
  }
}
