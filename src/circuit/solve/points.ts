/** Named points that can be made one; the node numbers come at the end. */
export class Points {
  readonly #index = new Map<string, number>();
  readonly #parent: number[] = [];

  /** The number of a point, made on first use. */
  of(name: string): number {
    const known = this.#index.get(name);
    if (known !== undefined) return known;
    const fresh = this.#parent.length;
    this.#index.set(name, fresh);
    this.#parent.push(fresh);
    return fresh;
  }

  find(name: string): number | null {
    return this.#index.get(name) ?? null;
  }

  join(a: number, b: number): void {
    this.#parent[this.#root(a)] = this.#root(b);
  }

  /** Node number of every point: points that were joined share one. */
  number(): { nodeOf: Int32Array; count: number } {
    const nodeOf = new Int32Array(this.#parent.length).fill(-1);
    let count = 0;
    for (let point = 0; point < nodeOf.length; point++) {
      const root = this.#root(point);
      if (nodeOf[root] === -1) nodeOf[root] = count++;
      nodeOf[point] = nodeOf[root] as number;
    }
    return { nodeOf, count };
  }

  #root(point: number): number {
    let root = point;
    while (this.#parent[root] !== root) root = this.#parent[root] as number;
    let walk = point;
    while (walk !== root) {
      const next = this.#parent[walk] as number;
      this.#parent[walk] = root;
      walk = next;
    }
    return root;
  }
}
