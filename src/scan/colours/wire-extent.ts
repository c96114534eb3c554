import type { Lab } from "./colour-difference.ts";
import { isOneSurface, mayBeStripe } from "./ground-beside.ts";
import { isPaler } from "./paler.ts";
import { differenceBeyondShade } from "./ranked.ts";
import { bridged, type Run, runsAcross } from "./runs-across.ts";
import { GRAIN } from "./wire-surroundings.ts";

/** Rows across that show the wire, `to` outside. */
export interface WireExtent {
  readonly from: number;
  readonly to: number;
  /** Whether both its edges are seen: what lies beyond them is no part of it. */
  readonly isCertain: boolean;
}

/** L* by which nothing in shade is brighter, and the stops of a shade that a wire throws. */
const BRIGHTER = 5;
const DEEP_SHADE = 2.5;
/** The broadest wire, and the thinnest, in radii of the spot. */
const BROADEST = 9;
const THINNEST = 1.5;
/** What lies between two runs of one colour is no stripe of one wire with them where it is so large a share ... */
const NO_STRIPE = 0.45;
/** ... or where they are so many times as broad; what is thinner than `GAP` of it may be a gleam. */
const GROUND = 5;
const GAP = 0.25;
/** The broadest gleam, of the wire; one that looks like the ground must be thinner, or it is the ground. */
const GLEAM = 0.45;
const GROUND_LIKE = 0.15;
/** A run beside the spot's that is thinner than this share of it may be a stripe in the same wire. */
const THINNER = 0.85;
/** What lies beyond a valley is another wire from this breadth on, of that of the spot's run. */
const NEIGHBOUR = 0.6;

/** The same for what is lit alike: a grey wire is not the brighter bench that it lies on. */
const EQUAL = 6;
const SAME_LIGHT = 0.5;

const alike = (one: Run, other: Run, stops?: number) =>
  isOneSurface(one.colour, other.colour, stops);
const isSame = (one: Run, other: Run) =>
  differenceBeyondShade(one.colour, other.colour, SAME_LIGHT) < EQUAL;

/**
 * Which rows belong to the wire that was touched in the middle: all between two runs of one ground, on
 * which it lies, or between the dark valleys where it touches its neighbours. The ring may lie beside a
 * stripe or on it: where no ground is certain, the farthest edges with no more than two colours count.
 */
export function wireExtent(profile: readonly (Lab | null)[]): WireExtent {
  const rows = bridged(profile, 0.8 * GRAIN);
  const middle = profile.length >> 1;
  const runs = runsAcross(rows);
  const own = runs.findIndex((run) => run.from <= middle && middle < run.to);
  const fallback = { from: middle - GRAIN, to: middle + GRAIN + 1, isCertain: false };
  if (own < 0) return fallback;
  const closed = closedRound(rows, runs, own);
  const extent = closed ?? openExtent(runs, own);
  const breadth = extent.to - extent.from;
  if (breadth > BROADEST * GRAIN) return fallback;
  return { ...extent, isCertain: extent.isCertain && breadth >= THINNEST * GRAIN };
}

/** The narrowest piece round the spot that lies on a ground, else the widest that may. */
function closedRound(
  rows: readonly (Lab | null)[],
  runs: readonly Run[],
  own: number,
): WireExtent | null {
  const closed: (WireExtent & { readonly isLying: boolean })[] = [];
  for (let left = own - 1; left >= 0; left--) {
    for (let right = own + 1; right < runs.length; right++) {
      const [before, after] = [runs[left], runs[right]] as [Run, Run];
      const breadth = after.from - before.to;
      if (breadth > BROADEST * GRAIN) break;
      const within = runs.slice(left + 1, right);
      const isGap = (run: Run) => isSame(run, before) && !isGleam(run, within, GROUND_LIKE);
      if (!alike(before, after) || within.some(isGap)) continue;
      if (within.some((run, index) => index > 0 && run.isParted)) continue;
      if (coloursOf(within) > 2) continue;
      const grounds = [groundFrom(runs, left, -1), groundFrom(runs, right, 1)] as const;
      const isLying =
        Math.min(...grounds) >= GAP * breadth &&
        (isGround(breadth, grounds) || isAllRound(runs, before));
      const edges = [runs[left + 1]?.isParted === true, after.isParted];
      const isDoubtful =
        mayBeStripe(rows, runs, within, left, -1) ||
        mayBeStripe(rows, runs, within, right, 1) ||
        isFlank(runs, left, -1) ||
        isFlank(runs, right, 1);
      closed.push({
        from: before.to,
        to: after.from,
        isLying: isLying || edges.every(Boolean),
        // Dark at one edge alone, what looks like ground at the other may be the wire's own stripe.
        isCertain: edges.every(Boolean) || (isLying && !edges.some(Boolean) && !isDoubtful),
      });
    }
  }
  const byBreadth = closed.toSorted((one, other) => one.to - one.from - (other.to - other.from));
  return byBreadth.find(({ isLying }) => isLying) ?? byBreadth.at(-1) ?? null;
}

/** Whether runs so broad on both sides of what is so broad are a ground, not the flanks of a stripe. */
const isGround = (breadth: number, [before, after]: readonly [number, number]) =>
  breadth >= NO_STRIPE * (breadth + before + after) ||
  (before >= GROUND * breadth && after >= GROUND * breadth);

/** Whether a ground farther off may be that beside a wire: there it lies in the wire's shade, and never in more light. */
const isGroundOf = (far: Run, near: Run): boolean =>
  near.colour[0] > far.colour[0] + BRIGHTER ? isSame(far, near) : alike(far, near, DEEP_SHADE);

/** Whether what is farthest off on both sides is that ground, too: a bench, not one wire's flanks. */
const isAllRound = (runs: readonly Run[], ground: Run): boolean =>
  [runs[0], runs.at(-1)].every((run) => run !== undefined && isGroundOf(run, ground));

/** How broad a ground is from a run outwards, in light and shade; without end where it leaves the sight. */
function groundFrom(runs: readonly Run[], at: number, step: 1 | -1): number {
  const first = runs[at] as Run;
  let breadth = 0;
  for (let index = at; ; index += step) {
    const run = runs[index];
    if (!run) return Number.POSITIVE_INFINITY;
    if (!isGroundOf(run, first)) return breadth;
    breadth += run.to - run.from;
  }
}

/** Whether a ground goes on in so much more light that it may be a dark wire's own flank, not the bench in shade. */
function isFlank(runs: readonly Run[], at: number, step: 1 | -1): boolean {
  const ground = runs[at] as Run;
  let index = at;
  while (runs[index] && alike(ground, runs[index] as Run)) index += step;
  const beyond = runs[index];
  return beyond !== undefined && isGroundOf(beyond, ground);
}

/** The spot's run with what may be stripes beside it; certain only between two valleys. */
function openExtent(runs: readonly Run[], own: number): WireExtent {
  const here = runs[own] as Run;
  const next = runs[own + 1];
  let { from, to } = here;
  const breadth = to - from;
  const mayBeStripe = (run: Run | undefined, isParted: boolean) =>
    run !== undefined && !isParted && run.to - run.from < THINNER * breadth;
  const before = runs[own - 1];
  // What is thin beyond a valley may be a dark stripe at the wire's edge.
  const isWire = (run: Run | undefined) =>
    run !== undefined && run.to - run.from >= NEIGHBOUR * breadth;
  const isCertain = here.isParted && next?.isParted === true && isWire(before) && isWire(next);
  if (before && mayBeStripe(before, here.isParted)) from = before.from;
  else if (next && mayBeStripe(next, next.isParted)) to = next.to;
  return { from, to, isCertain };
}

/** Whether a run among others may be light thrown back by one of them. */
function isGleam(run: Run, runs: readonly Run[], most: number): boolean {
  const breadth = (runs.at(-1)?.to ?? 0) - (runs[0]?.from ?? 0);
  return (
    run.to - run.from < most * breadth &&
    runs.some((one) => one !== run && isPaler(one.colour, run.colour))
  );
}

/** How many colours there are in runs; gleams are none. */
function coloursOf(runs: readonly Run[]): number {
  const told: Run[] = [];
  for (const run of runs) {
    if (!told.some((one) => alike(one, run)) && !isGleam(run, runs, GLEAM)) told.push(run);
  }
  return told.length;
}
