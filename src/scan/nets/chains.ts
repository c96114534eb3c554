import type { Point } from "../../base/index.ts";
import type { Branch } from "../lines/branch.ts";
import type { FollowedPage } from "../lines/follow.ts";
import type { Stretch } from "../lines/skeleton.ts";
import type { Sliced } from "../sliced.ts";

/** An end of a stretch as a number: twice the stretch, and one more at the end called `to`. */
export type StretchEnd = number;

export const endOf = ({ stretch, isFrom }: Branch): StretchEnd => 2 * stretch + (isFrom ? 0 : 1);

/** Where a chain crosses another line, before its place number `index`. */
export interface Crossing {
  readonly index: number;
  readonly at: Point;
}

/** Stretches that are one line, over crossings and holes, from a node of the net to the next. */
export interface Chain {
  readonly stretches: readonly number[];
  readonly from: StretchEnd;
  readonly to: StretchEnd;
  /** Closed: `from` and `to` are one, and no node. */
  readonly isRing: boolean;
  /** Places on the prepared page in order, those left out where lines meet and lie askew. */
  readonly places: readonly number[];
  readonly crossings: readonly Crossing[];
}

/** In line widths: round a crossing or joint thinned lines lie askew; near a hole their ends do. */
const ASKEW = 0.6;
const TAIL = 0.7;

/** Ends of stretches a slice, and of places where lines meet. */
const SLICE = 4_000;
const PLACES = 5_000;

interface Mate {
  readonly end: StretchEnd;
  readonly at: Point;
  readonly radius: number;
  readonly isCrossing: boolean;
}

/** All lines of a page as chains; bumps of ink that are no lines are left out. */
export function* chainsOf({ skeleton, links }: FollowedPage, lineWidth: number): Sliced<Chain[]> {
  const { stretches, width } = skeleton;
  // Both by number of an end, and no maps: they are read for every end of a page.
  const mateOf: (Mate | undefined)[] = Array(2 * stretches.length);
  const askewAt: ({ at: Point; radius: number } | undefined)[] = Array(2 * stretches.length);
  for (const [n, { ends, at, radius, isCrossing }] of links.passes.entries()) {
    if (n % PLACES === PLACES - 1) yield 0;
    const [a, b] = [endOf(ends[0]), endOf(ends[1])];
    mateOf[a] = { end: b, at, radius, isCrossing };
    mateOf[b] = { end: a, at, radius, isCrossing };
  }
  for (const [n, { ends, at, radius }] of links.junctions.entries()) {
    if (n % PLACES === PLACES - 1) yield 0;
    const around = { at, radius: radius + ASKEW * lineWidth };
    for (const branch of ends) askewAt[endOf(branch)] = around;
  }
  yield 0;
  const tapped = new Set(links.taps.map(({ end }) => end.stretch));
  const isLine = (stretch: number) =>
    !links.bumps.has(stretch) ||
    tapped.has(stretch) ||
    mateOf[2 * stretch] !== undefined ||
    mateOf[2 * stretch + 1] !== undefined;
  const done = new Uint8Array(stretches.length);
  const chains: Chain[] = [];
  const walk = (from: StretchEnd, isRing: boolean) => {
    const members: number[] = [];
    const places: number[] = [];
    const crossings: Crossing[] = [];
    let [end, to] = [from, from];
    let near: { at: Point; radius: number } | null = askewAt[from] ?? null;
    for (;;) {
      const stretch = end >> 1;
      if (done[stretch]) break;
      done[stretch] = 1;
      members.push(stretch);
      to = end ^ 1;
      const mate = mateOf[to];
      const far = mate
        ? mate.radius > 0
          ? { at: mate.at, radius: mate.radius + ASKEW * lineWidth }
          : null
        : (askewAt[to] ?? null);
      const { pixels } = stretches[stretch] as Stretch;
      const [first, last] = trimmed(pixels, end % 2 === 1, near, far);
      if (end % 2 === 0) for (let n = first; n <= last; n++) places.push(pixels[n] as number);
      else for (let n = last; n >= first; n--) places.push(pixels[n] as number);
      if (!mate) break;
      if (mate.isCrossing) crossings.push({ index: places.length, at: mate.at });
      near = far;
      end = mate.end;
    }
    chains.push({ stretches: members, from, to, isRing, places, crossings });
  };
  for (let end = 0; end < 2 * stretches.length; end++) {
    if (end % SLICE === SLICE - 1) yield end / (2 * stretches.length);
    if (!done[end >> 1] && isLine(end >> 1) && !mateOf[end]) walk(end, false);
  }
  for (let stretch = 0; stretch < stretches.length; stretch++) {
    if (stretch % PLACES === PLACES - 1) yield 1;
    if (!done[stretch] && isLine(stretch)) walk(2 * stretch, true);
  }
  return chains;

  /** First and last pixel, as they stand in the stretch, that are not askew at either end of it. */
  function trimmed(
    pixels: Int32Array,
    isTurned: boolean,
    near: { at: Point; radius: number } | null,
    far: { at: Point; radius: number } | null,
  ): [number, number] {
    const [start, end] = isTurned ? [far, near] : [near, far];
    let [first, last] = [0, pixels.length - 1];
    const isIn = (n: number, around: { at: Point; radius: number }) => {
      const at = pixels[n] as number;
      const [x, y] = [at % width, Math.floor(at / width)];
      return Math.hypot(x - around.at[0], y - around.at[1]) <= around.radius;
    };
    while (start && first <= last && isIn(first, start)) first++;
    while (end && first <= last && isIn(last, end)) last--;
    const tail = Math.round(TAIL * lineWidth);
    if (!start && last - first > 4 * tail) first += tail;
    if (!end && last - first > 4 * tail) last -= tail;
    return [first, last];
  }
}
