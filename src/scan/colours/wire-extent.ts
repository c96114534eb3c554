import type { Lab } from "./colour-difference.ts";
import { differenceBeyondShade } from "./ranked.ts";

/** Rows of a strip that show the wire, `to` outside. */
export interface WireExtent {
  readonly from: number;
  readonly to: number;
  /** Whether what lies beside may as well belong to it, or the other way round. */
  readonly isDoubtful: boolean;
}

/** Neighbouring rows of one colour. */
interface Run {
  readonly from: number;
  readonly to: number;
  readonly colour: Lab;
}

/** Squared spread that a join may add: two runs of three rows, 11 apart in L*a*b*. */
const SPREAD = 180;
/** Lightness counts less than half: a round wire is dark at its sides. */
const LIGHTNESS = 0.45;
/** CIEDE2000 beyond shade under which two neighbouring runs are one surface in light and shade ... */
const SHADED = 7;
/** ... and, within half a stop, two runs with something between them. */
const ALIKE = 9;

/** The broadest stripe, and the broadest wire, in radii of the spot. */
const BROADEST_STRIPE = 1.4;
const BROADEST_WIRE = 5.4;

/**
 * Which rows belong to the wire that was touched in the middle: the run there, with thin stripes and
 * gleams between runs of one colour taken as part of one wire. A thin run with nothing that closes
 * round it may be a thin wire or the stripe of a broad one.
 */
export function wireExtent(profile: readonly (Lab | null)[], reach: number): WireExtent {
  const middle = profile.length >> 1;
  const runs = joined(runsOf(bridged(profile, reach)), reach, profile.length);
  const own = runs.find((run) => run.from <= middle && middle < run.to);
  if (!own) return { from: middle - 1, to: middle + 2, isDoubtful: true };
  const breadth = own.to - own.from;
  // Broader than it was taken for, there may be a stripe in it that was not reckoned to it.
  const index = runs.indexOf(own);
  const goesOn = [runs[index - 2], runs[index + 2]].some(
    (other) =>
      other !== undefined &&
      Math.max(own.from - other.to, other.from - own.to) <= BROADEST_STRIPE * reach &&
      differenceBeyondShade(own.colour, other.colour, 1) < ALIKE,
  );
  return {
    from: own.from,
    to: own.to,
    isDoubtful: goesOn || breadth < 1.3 * reach || breadth > BROADEST_WIRE * reach,
  };
}

/** Rows in a narrow gleam, where nothing can be told, taken as the row before. */
function bridged(profile: readonly (Lab | null)[], reach: number): readonly (Lab | null)[] {
  const out = [...profile];
  for (let row = 1; row < out.length; row++) {
    if (out[row] !== null) continue;
    const next = out.findIndex((one, at) => at > row && one !== null);
    if (next < 0) break;
    if (next - row <= 0.6 * reach) out.fill(out[row - 1] ?? null, row, next);
    row = next;
  }
  return out;
}

/** Runs with every thin one between two of one colour made one with both, the thinnest first. */
function joined(runs: readonly Run[], reach: number, length: number): readonly Run[] {
  const thinnest = runs
    .map((run, index) => ({ run, index }))
    .filter(({ run, index }) => {
      const [before, after] = [runs[index - 1], runs[index + 1]];
      if (!before || !after || run.to - run.from > BROADEST_STRIPE * reach) return false;
      if (before.to !== run.from || run.to !== after.from) return false;
      // What runs on out of sight on either side is a bench, on which the spot is a thin wire.
      const isSpot = run.from <= length >> 1 && length >> 1 < run.to;
      if (isSpot && (before.from === 0 || after.to === length)) return false;
      if (after.to - before.from > BROADEST_WIRE * reach) return false;
      return differenceBeyondShade(before.colour, after.colour, 0.5) < ALIKE;
    })
    .toSorted((one, other) => one.run.to - one.run.from - (other.run.to - other.run.from))[0];
  if (!thinnest) return runs;
  const [before, after] = [runs[thinnest.index - 1], runs[thinnest.index + 1]] as [Run, Run];
  const broader = before.to - before.from > after.to - after.from ? before : after;
  const one = { from: before.from, to: after.to, colour: broader.colour };
  return joined(runs.toSpliced(thinnest.index - 1, 3, one), reach, length);
}

/**
 * Rows put together, the two most alike neighbours first (Ward 1963: what a join adds to the squared
 * spread), and then neighbours that differ by no more than light and shade.
 */
function runsOf(profile: readonly (Lab | null)[]): readonly Run[] {
  let runs: readonly Run[] = profile.flatMap((colour, row) =>
    colour ? [{ from: row, to: row + 1, colour }] : [],
  );
  runs = joinedWhile(runs, spreadOfJoin, SPREAD);
  return joinedWhile(
    runs,
    (one, other) => differenceBeyondShade(one.colour, other.colour, 1),
    SHADED,
  );
}

/** Joins the two neighbours of least cost until none costs less than `most`. */
function joinedWhile(
  runs: readonly Run[],
  cost: (one: Run, other: Run) => number,
  most: number,
): readonly Run[] {
  const left = [...runs];
  const costTo = (one: Run, other: Run | undefined) =>
    other?.from === one.to ? cost(one, other) : Number.POSITIVE_INFINITY;
  const costs = left.map((run, index) => costTo(run, left[index + 1]));
  for (;;) {
    const at = costs.indexOf(Math.min(...costs));
    const [one, other] = [left[at], left[at + 1]];
    if (!one || !other || (costs[at] ?? most) >= most) return left;
    left.splice(at, 2, joinOf(one, other));
    costs.splice(at, 1);
    for (const index of [at - 1, at]) {
      const before = left[index];
      if (before) costs[index] = costTo(before, left[index + 1]);
    }
  }
}

function joinOf(one: Run, other: Run): Run {
  const [n, m] = [one.to - one.from, other.to - other.from];
  const mean = (i: 0 | 1 | 2) => (n * one.colour[i] + m * other.colour[i]) / (n + m);
  return { from: one.from, to: other.to, colour: [mean(0), mean(1), mean(2)] };
}

function spreadOfJoin({ from, to, colour }: Run, other: Run): number {
  const [n, m] = [to - from, other.to - other.from];
  const apart =
    (LIGHTNESS * (colour[0] - other.colour[0])) ** 2 +
    (colour[1] - other.colour[1]) ** 2 +
    (colour[2] - other.colour[2]) ** 2;
  return ((n * m) / (n + m)) * apart;
}
