/**
 * What changed from one document (or list of roles or findings) to the next, as data small enough
 * to be sent at each keystroke. Things that did not change must be the same objects, as they are
 * after an edit; they are the same objects again where the changes are applied.
 */

type Path = readonly (string | number)[];

/** At `path` a value is put or taken away, or some of a list are taken out for others. */
export type Change =
  | { readonly put: unknown; readonly path: Path }
  | { readonly drop: true; readonly path: Path }
  | {
      readonly from: number;
      readonly out: number;
      readonly into: readonly unknown[];
      readonly path: Path;
    };

/** The changes that make `now` of `before`; none where both are the same object. */
export function changesFrom(before: unknown, now: unknown): readonly Change[] {
  const changes: Change[] = [];
  compare(before, now, [], changes);
  return changes;
}

function compare(before: unknown, now: unknown, path: Path, changes: Change[]): void {
  if (Object.is(before, now)) return;
  if (Array.isArray(before) && Array.isArray(now)) compareLists(before, now, path, changes);
  else if (isFields(before) && isFields(now)) {
    for (const name of Object.keys(before))
      if (!Object.hasOwn(now, name)) changes.push({ drop: true, path: [...path, name] });
    for (const [name, value] of Object.entries(now)) {
      if (Object.hasOwn(before, name)) compare(before[name], value, [...path, name], changes);
      else changes.push({ put: value, path: [...path, name] });
    }
  } else changes.push({ put: now, path });
}

function compareLists(
  before: readonly unknown[],
  now: readonly unknown[],
  path: Path,
  changes: Change[],
): void {
  if (before.length === now.length) {
    now.forEach((value, index) => {
      if (value !== before[index]) compare(before[index], value, [...path, index], changes);
    });
    return;
  }
  let from = 0;
  while (from < before.length && from < now.length && before[from] === now[from]) from++;
  let same = 0;
  const most = Math.min(before.length, now.length) - from;
  while (same < most && before[before.length - 1 - same] === now[now.length - 1 - same]) same++;
  const into = now.slice(from, now.length - same);
  changes.push({ from, out: before.length - same - from, into, path });
}

const isFields = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The document that the changes make; what they don't touch stays the same objects. */
export function withChanges<T>(before: T, changes: readonly Change[]): T {
  /** Copies made for these changes, which may be changed further. */
  const own = new Set<unknown>();
  const ownCopy = <V extends object>(value: V): V => {
    if (own.has(value)) return value;
    const copy = (Array.isArray(value) ? [...value] : { ...value }) as V;
    own.add(copy);
    return copy;
  };
  const change = (value: unknown, one: Change, depth: number): unknown => {
    const step = one.path[depth];
    if (step === undefined) {
      if ("put" in one) return one.put;
      if (!("into" in one) || !Array.isArray(value)) throw lost(one);
      return [...value.slice(0, one.from), ...one.into, ...value.slice(one.from + one.out)];
    }
    if (typeof value !== "object" || value === null) throw lost(one);
    const copy = ownCopy(value as Record<string | number, unknown>);
    if ("drop" in one && depth === one.path.length - 1) delete copy[step];
    else copy[step] = change(copy[step], one, depth + 1);
    return copy;
  };
  return changes.reduce<unknown>((value, one) => change(value, one, 0), before) as T;
}

const lost = ({ path }: Change) => new Error(`no such place: ${path.join(".")}`);

/** A list in terms of the one before it: runs of places that stay, and new things. */
export type Runs<T> = readonly (readonly [from: number, count: number] | { readonly add: T[] })[];

export function runsFrom<T>(before: readonly T[], now: readonly T[]): Runs<T> {
  const places = new Map(before.map((one, place) => [one, place]));
  const runs: ([number, number] | { add: T[] })[] = [];
  for (const one of now) {
    const place = places.get(one);
    const last = runs.at(-1);
    if (place === undefined) {
      if (last && "add" in last) last.add.push(one);
      else runs.push({ add: [one] });
    } else if (Array.isArray(last) && last[0] + last[1] === place) last[1]++;
    else runs.push([place, 1]);
  }
  return runs;
}

export const fromRuns = <T>(before: readonly T[], runs: Runs<T>): readonly T[] =>
  runs.flatMap((run) => ("add" in run ? run.add : before.slice(run[0], run[0] + run[1])));
