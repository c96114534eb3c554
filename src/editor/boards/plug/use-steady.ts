import { useRef } from "react";

/**
 * The list, with each thing that is as it was before the very object of before, and the very list
 * where all are: what is drawn of them need not be drawn again.
 */
export function useSteady<T extends object>(list: readonly T[]): readonly T[] {
  const last = useRef(list);
  if (last.current === list) return list;
  const before = last.current;
  const steady = list.map((one, index) => {
    const known = before[index];
    return known && isAlike(known, one) ? known : one;
  });
  const isSame = steady.length === before.length && steady.every((one, at) => one === before[at]);
  last.current = isSame ? before : steady;
  return last.current;
}

/** Field by field the same values or objects; a point of two numbers by its numbers. */
function isAlike<T extends object>(a: T, b: T): boolean {
  const names = Object.keys(a) as (keyof T)[];
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => Object.is(a[name], b[name]) || isSamePoint(a[name], b[name]))
  );
}

const isSamePoint = (a: unknown, b: unknown): boolean =>
  Array.isArray(a) &&
  Array.isArray(b) &&
  a.length === b.length &&
  a.every((value, index) => typeof value === "number" && value === b[index]);
