/** So many in a row may be gone from a list before what follows them is looked up in a table. */
const MOST_GONE = 8;

/**
 * Finds what was kept for the things of a list again, as the list of now is gone through from its
 * beginning. What stays in step is found at the place where it is expected, past a few that are
 * gone; only what is new or comes from elsewhere is looked up by its key.
 */
export class InStep<K, T> {
  private readonly before: readonly T[];
  private readonly keyOf: (one: T) => K;
  private readonly elsewhere: ((key: K) => T | undefined) | undefined;
  private table: ReadonlyMap<K, T> | undefined;
  private expected = 0;
  private passedAny = false;

  /** `elsewhere` finds one by its key that is not where it is expected; left out, a table is made. */
  constructor(before: readonly T[], keyOf: (one: T) => K, elsewhere?: (key: K) => T | undefined) {
    this.before = before;
    this.keyOf = keyOf;
    this.elsewhere = elsewhere;
  }

  find(key: K): T | undefined {
    const { before, keyOf, expected } = this;
    const end = Math.min(before.length, expected + MOST_GONE + 1);
    for (let at = expected; at < end; at++) {
      const one = before[at] as T;
      if (keyOf(one) !== key) continue;
      if (at > expected) this.passedAny = true;
      this.expected = at + 1;
      return one;
    }
    if (this.elsewhere) return this.elsewhere(key);
    // All of them are found already: this one comes after the last.
    if (expected === before.length && !this.passedAny) return undefined;
    this.table ??= new Map(before.map((one) => [keyOf(one), one]));
    return this.table.get(key);
  }
}
