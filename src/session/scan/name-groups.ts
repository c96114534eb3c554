/** Names that come to belong together, added as they come up. */
export class NameGroups {
  readonly #parent = new Map<string, string>();

  /** The one that stands for all that belong together with this. */
  of(name: string): string {
    let root = name;
    for (let up = this.#parent.get(root); up !== undefined; up = this.#parent.get(root)) root = up;
    let walk = name;
    while (walk !== root) {
      const next = this.#parent.get(walk) as string;
      this.#parent.set(walk, root);
      walk = next;
    }
    return root;
  }

  /** Returns false where the two belonged together already. */
  join(a: string, b: string): boolean {
    const [from, to] = [this.of(a), this.of(b)];
    if (from === to) return false;
    this.#parent.set(from, to);
    return true;
  }
}
