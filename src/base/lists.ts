/** Whether two lists hold the same things in the same order; objects are compared by identity. */
export const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, index) => one === b[index]);

/** The lists end to end, as `Array.flat` puts them but in a fraction of its time. */
export function flat<T>(lists: readonly (readonly T[])[]): T[] {
  const all: T[] = [];
  for (const list of lists) for (const one of list) all.push(one);
  return all;
}

/** Adds to the list that a map has under a key, which is begun with the first one. */
export function addTo<K, T>(map: Map<K, T[]>, key: K, one: T): void {
  const list = map.get(key);
  if (list) list.push(one);
  else map.set(key, [one]);
}

/** How many at the beginning of a list pass a test that nothing passes behind the first that fails it. */
export function countLeading<T>(list: readonly T[], passes: (one: T) => boolean): number {
  let [count, failing] = [0, list.length];
  while (count < failing) {
    const half = (count + failing) >> 1;
    if (passes(list[half] as T)) count = half + 1;
    else failing = half;
  }
  return count;
}

/** Where two lists differ: from the same place in both up to a place in the one and one in the other. */
export interface Stretch {
  readonly from: number;
  readonly before: number;
  readonly now: number;
}

/** The shortest stretch outside of which two lists hold the same things; objects by identity. */
export function stretchOfChange(before: readonly unknown[], now: readonly unknown[]): Stretch {
  const least = Math.min(before.length, now.length);
  let from = 0;
  while (from < least && before[from] === now[from]) from++;
  let behind = 0;
  const most = least - from;
  while (behind < most && before[before.length - 1 - behind] === now[now.length - 1 - behind])
    behind++;
  return { from, before: before.length - behind, now: now.length - behind };
}
