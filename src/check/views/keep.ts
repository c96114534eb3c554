import { sameList } from "../../base/index.ts";

/** Whether two views of one thing hold the same; lists are looked into, anything else is compared as it is. */
export function isSame<V extends object>(a: V, b: V): boolean {
  if (a === b) return true;
  for (const field of Object.keys(b) as (keyof V)[]) {
    const [one, other] = [a[field], b[field]];
    if (one !== other && !(Array.isArray(one) && Array.isArray(other) && sameList(one, other)))
      return false;
  }
  return true;
}

/** The list of before where the new one holds the same objects in the same order. */
export const keepList = <T>(before: readonly T[] | undefined, now: readonly T[]): readonly T[] =>
  before && sameList(before, now) ? before : now;

/** The last answer, kept for as long as what it was worked out of stays the same. */
export class Last<T> {
  private inputs: readonly unknown[] | null = null;
  private value: T | undefined;

  /** `work` gets the answer of before; it is not called at all where every input is the same. */
  of(inputs: readonly unknown[], work: (before: T | undefined) => T): T {
    if (this.inputs && sameList(this.inputs, inputs)) return this.value as T;
    this.value = work(this.value);
    this.inputs = inputs;
    return this.value;
  }
}

/** One view for each thing, the one of before where it is the same. Things that are gone are forgotten. */
export class Views<K, V extends object> {
  private views = new Map<K, V>();

  of(things: Iterable<readonly [key: K, view: V]>): readonly V[] {
    const next = new Map<K, V>();
    const list: V[] = [];
    for (const [key, view] of things) {
      const known = next.get(key) ?? this.views.get(key);
      const kept = known && isSame(known, view) ? known : view;
      next.set(key, kept);
      list.push(kept);
    }
    this.views = next;
    return list;
  }
}
