import { stretchOfChange } from "./lists.ts";

/** So many in a row may be gone before what follows them counts as one that comes from elsewhere. */
const MOST_GONE = 8;

/**
 * What became of the things of a list, as it is once some came, went or moved; no thing is in a list
 * twice. It takes one look at each place, and a table only of what is not where it is expected.
 */
export class ListChange<T> {
  /** Places of those that were not there before. */
  readonly added: readonly number[];
  private readonly before: readonly T[];
  private readonly now: readonly T[];
  private readonly from: number;
  /** How much further on all that lies behind the change is. */
  private readonly shift: number;
  private places: Map<T, number> | undefined;

  constructor(before: readonly T[], now: readonly T[]) {
    const stretch = stretchOfChange(before, now);
    this.before = before;
    this.now = now;
    this.from = stretch.from;
    this.shift = stretch.now - stretch.before;
    const passed: T[] = [];
    const open: number[] = [];
    let expected = stretch.from;
    for (let place = stretch.from; place < stretch.now; place++) {
      const end = Math.min(stretch.before, expected + MOST_GONE + 1);
      let at = expected;
      while (at < end && before[at] !== now[place]) at++;
      if (at === end) {
        open.push(place);
        continue;
      }
      for (; expected < at; expected++) passed.push(before[expected] as T);
      expected++;
    }
    for (; expected < stretch.before; expected++) passed.push(before[expected] as T);
    const known = new Set(open.length > 0 ? passed : []);
    this.added = open.filter((place) => !known.has(now[place] as T));
  }

  /** Where the thing that was at a place is now; −1: nowhere. */
  placeOf(place: number): number {
    const { before, now, from, shift } = this;
    const thing = before[place] as T;
    if (place < from || now[place] === thing) return place;
    if (now[place + shift] === thing) return place + shift;
    this.places ??= new Map(now.map((one, at) => [one, at]));
    return this.places.get(thing) ?? -1;
  }
}
