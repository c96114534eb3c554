import type { Lab } from "./colour-difference.ts";
import { differenceBeyondShade } from "./ranked.ts";
import { GRAIN } from "./wire-surroundings.ts";

/** Neighbouring rows of one colour, in light and shade. */
export interface Run {
  readonly from: number;
  readonly to: number;
  readonly colour: Lab;
  /** Whether a dark valley parts it from the run before: where two round wires touch. */
  readonly isParted: boolean;
}

/** Squared spread that a join may add: two runs of three rows, 11 apart in L*a*b*. */
const SPREAD = 180;
/** Lightness counts less than half: a round wire is dark at its sides. */
const LIGHTNESS = 0.45;
/** CIEDE2000 between what faces one another at a border, beyond so many stops of shade: a stripe's edge is abrupt, shade is not. */
const ABRUPT = 6;
const SHADE = 0.5;
/** No more rows than this are a border's blur. */
const BLUR = Math.round(0.34 * GRAIN);
/** How far a mixture of two colours may lie off them, in L*a*b*. */
const MIXTURE = 6;
/** L* that a valley lies under both of its sides, and how far from its bottom those are looked at. */
const DEEP = 7;
const SLOPE = Math.round(0.8 * GRAIN);

/** Rows in a narrow gleam, where nothing can be told, taken as the row before. */
export function bridged(profile: readonly (Lab | null)[], most: number): readonly (Lab | null)[] {
  const out = [...profile];
  for (let row = 1; row < out.length; row++) {
    if (out[row] !== null) continue;
    const next = out.findIndex((one, at) => at > row && one !== null);
    if (next < 0) break;
    if (next - row <= most) out.fill(out[row - 1] ?? null, row, next);
    row = next;
  }
  return out;
}

/**
 * Rows put together: the two most alike neighbours first (Ward 1963: what a join adds to the squared
 * spread), then neighbours that pass into one another as light into shade does.
 */
export function runsAcross(rows: readonly (Lab | null)[]): readonly Run[] {
  const single = rows.flatMap((colour, row) =>
    colour ? [{ from: row, to: row + 1, colour, isParted: false }] : [],
  );
  const even = joinedWhile(single, spreadOfJoin, SPREAD);
  const shaded = joinedWhile(
    withoutBlur(even),
    (one, other) => differenceBeyondShade(facing(rows, one, 1), facing(rows, other, -1), SHADE),
    ABRUPT,
  );
  return shaded.map((run, index) => {
    const before = shaded[index - 1];
    const isParted = before?.to === run.from && isValley(rows, before, run);
    return { ...run, isParted };
  });
}

/** The colour near a run's end, its blurred last row left out. */
function facing(rows: readonly (Lab | null)[], { from, to, colour }: Run, side: 1 | -1): Lab {
  const at = side === 1 ? to - 2 : from + 1;
  const near = [at, at - side].flatMap((row) =>
    row >= from && row < to && rows[row] ? [rows[row] as Lab] : [],
  );
  const [one, other] = near;
  if (!one) return colour;
  if (!other) return one;
  return [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2, (one[2] + other[2]) / 2];
}

/**
 * What is thin and lies in colour between the broader runs on both sides shared out to them: the blur of
 * a border, or the dark side of a round wire. A thin line of a colour of its own stays, as one run.
 */
function withoutBlur(runs: readonly Run[]): readonly Run[] {
  const out: Run[] = [];
  let thin: Run[] = [];
  const isThin = (run: Run) => run.to - run.from <= BLUR;
  for (const [index, run] of runs.entries()) {
    const isLast = index === runs.length - 1;
    if (isThin(run) && !isLast && out.length > 0) {
      thin.push(run);
      continue;
    }
    const before = out.at(-1);
    const [first, last] = [thin[0], thin.at(-1)];
    if (before && first && last) {
      const follows = before.to === first.from && last.to === run.from;
      if (follows && thin.every((one) => isBetween(one, before, run))) {
        const cut = (first.from + last.to) >> 1;
        out[out.length - 1] = { ...before, to: cut };
        out.push({ ...run, from: cut });
        thin = [];
        continue;
      }
      out.push(thin.reduce((one, other) => (one.to === other.from ? joinOf(one, other) : other)));
      thin = [];
    }
    out.push(run);
  }
  return out;
}

/** Whether a run's colour is a mixture of two others, or darker than that. */
function isBetween({ colour }: Run, one: Run, other: Run): boolean {
  const [a, b] = [one.colour, other.colour];
  const within = (i: 0 | 1 | 2) =>
    colour[i] >= Math.min(a[i], b[i]) - MIXTURE && colour[i] <= Math.max(a[i], b[i]) + MIXTURE;
  return within(1) && within(2) && colour[0] <= Math.max(a[0], b[0]) + MIXTURE;
}

/** Whether the light sinks towards a border from both sides, under what is usual on both. */
function isValley(rows: readonly (Lab | null)[], before: Run, run: Run): boolean {
  const light = (from: number, to: number) =>
    rows.slice(Math.max(0, from), to).flatMap((one) => one?.[0] ?? []);
  const usual = ({ from, to }: Run) => {
    const all = light(from, to).toSorted((one, other) => one - other);
    return all[all.length >> 1] ?? 0;
  };
  // What is thinner is the dark line itself.
  if (Math.min(before.to - before.from, run.to - run.from) <= BLUR + 1) return false;
  const border = run.from;
  const bottom = Math.min(...light(border - 2, border + 2));
  const sides = [
    Math.min(usual(before), Math.max(...light(Math.max(before.from, border - SLOPE), border - 1))),
    Math.min(usual(run), Math.max(...light(border + 1, Math.min(run.to, border + SLOPE)))),
  ];
  return sides.every((side) => side - bottom >= DEEP);
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
  return { from: one.from, to: other.to, colour: [mean(0), mean(1), mean(2)], isParted: false };
}

function spreadOfJoin({ from, to, colour }: Run, other: Run): number {
  const [n, m] = [to - from, other.to - other.from];
  const apart =
    (LIGHTNESS * (colour[0] - other.colour[0])) ** 2 +
    (colour[1] - other.colour[1]) ** 2 +
    (colour[2] - other.colour[2]) ** 2;
  return ((n * m) / (n + m)) * apart;
}
