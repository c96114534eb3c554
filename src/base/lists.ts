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
