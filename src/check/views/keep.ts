import { flat, InStep, sameList } from "../../base/index.ts";

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

/**
 * One of something for each of the things, in their order; `again` gets the one of before. The very
 * list of before where every one of them is the same: most edits leave most lists as they were, and
 * a list made anew for nothing costs more in garbage than all that it is made of.
 */
export function keepInStep<K, T>(
  before: readonly T[],
  things: readonly K[],
  thingOf: (one: T) => K,
  again: (thing: K, known: T | undefined) => T,
): readonly T[] {
  const old = new InStep(before, thingOf);
  let changed: T[] | null = null;
  for (let at = 0; at < things.length; at++) {
    const thing = things[at] as K;
    const now = again(thing, old.find(thing));
    if (changed === null && now === before[at]) continue;
    changed ??= before.slice(0, things.length);
    changed[at] = now;
  }
  if (changed) return changed;
  return things.length === before.length ? before : before.slice(0, things.length);
}

/** All that each of `kept` has, end to end; the list of before where that holds the same. */
export function keepFlat<K, T>(
  before: readonly T[] | undefined,
  kept: readonly K[],
  listOf: (one: K) => readonly T[],
): readonly T[] {
  let length = 0;
  let isSameSoFar = before !== undefined;
  for (let at = 0; at < kept.length; at++) {
    const list = listOf(kept[at] as K);
    for (let place = 0; isSameSoFar && place < list.length; place++)
      isSameSoFar = list[place] === before?.[length + place];
    length += list.length;
  }
  if (before && isSameSoFar && before.length === length) return before;
  return flat(kept.map(listOf));
}

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

  /** The view of a thing as it was last. */
  known(key: K): V | undefined {
    return this.views.get(key);
  }

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
