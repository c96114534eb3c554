/** Ground by another name in some simulators. */
const RESERVED = ["0", "gnd"];
const LONGEST = 40;

/**
 * Hands out names that any SPICE takes: lower-case ASCII letters, digits and underscores, the first
 * a letter, no two alike. What an id really is stands in the deck's remarks, so that no id, however
 * odd, can end a line or begin one.
 */
export class Names {
  readonly #taken = new Set<string>(RESERVED);
  readonly #next = new Map<string, number>();

  /** A fresh name as near to `text` as it may be: `G1:+` gives `g1_plus`, the next one `g1_plus_2`. */
  of(text: string): string {
    const base = tame(text);
    let name = base;
    let count = this.#next.get(base) ?? 1;
    while (this.#taken.has(name)) name = `${base}_${++count}`;
    this.#next.set(base, count);
    this.#taken.add(name);
    return name;
  }
}

function tame(text: string): string {
  const tamed = text
    .slice(0, 4 * LONGEST)
    .normalize("NFKD")
    .toLowerCase()
    .replace(/\p{M}/gu, "")
    .replace(/\+/g, "_plus")
    // a minus at the end of a pin's name is its polarity, inside a name it is a hyphen
    .replace(/-(?![a-z0-9])/g, "_minus")
    .replace(/[^a-z0-9]+/g, "_")
    .replace(/^_+/, "")
    .slice(0, LONGEST)
    .replace(/_+$/, "");
  return /^[a-z]/.test(tamed) ? tamed : `n${tamed}`;
}
