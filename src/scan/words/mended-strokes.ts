import { middleOf, type Stroke } from "./line-strokes.ts";

/** A piece of a letter that a line hid, between two rows, which are not part of it: at each row from one place to another. */
export interface Patch {
  readonly rows: readonly [number, number];
  /** Where it begins and ends, places along the line, at the one row and at the other. */
  readonly at: readonly [readonly [number, number], readonly [number, number]];
}

/** Strokes meet where they point at one another: so many pixels, and so much of the way between them, beside it. */
const ASIDE = 1.5;
const ASIDE_SHARE = 0.35;
/** A stroke through a line leans no more than this, across it 1. */
const FARTHEST = 1.5;
/** A second stroke that meets where two do already. */
const SECOND = 1;
const SECOND_SHARE = 0.2;
/** A curve leans over at least so much where it comes up to a line; so little is a stem. */
const LEANS = 0.35;
const STEM = -0.12;
/** A stem and the bar that it ends at lie so far beside one another, in widths of what hides them. */
const BAR_ASIDE = 0.6;
/** Two ends of one curve are no farther apart, in widths of what hides it. */
const CURVE = 5;

/**
 * The pieces of letters that a line hid, by the strokes that come up to it; `areOne` says whether two on one
 * side hang together there.
 */
export function patchesBetween(
  strokes: readonly Stroke[],
  areOne: (one: Stroke, other: Stroke) => boolean,
): Patch[] {
  const upper = strokes.filter(({ side }) => side === -1);
  const lower = strokes.filter(({ side }) => side === 1);
  const patches: Patch[] = [];
  const met = new Set<Stroke>();
  const meet = (a: Stroke, b: Stroke) => {
    met.add(a).add(b);
    patches.push({
      rows: [a.row, b.row],
      at: [
        [a.from, a.to],
        [b.from, b.to],
      ],
    });
  };
  const pairs = pairsOf(upper, lower);
  for (const { a, b, by, error, gap } of pairs) {
    if (Math.abs(by) > FARTHEST * gap + ASIDE) continue;
    const isSecond = met.has(a) || met.has(b);
    if (met.has(a) && met.has(b)) continue;
    if (error <= (isSecond ? SECOND + SECOND_SHARE * gap : ASIDE + ASIDE_SHARE * gap)) meet(a, b);
  }
  for (const a of upper) {
    for (const b of lower) {
      const patch = atBar(a, b);
      if (!patch) continue;
      met.add(a).add(b);
      patches.push(patch);
    }
  }
  patches.push(...closings(upper, met, areOne), ...closings(lower, met, areOne));
  for (const { a, b, by, gap } of pairs) {
    const towards = Math.sign(by);
    const leans = Math.min(towards * a.slope, -towards * b.slope) >= LEANS;
    if (leans && Math.abs(by) <= CURVE * gap && !met.has(a) && !met.has(b)) meet(a, b);
  }
  return patches;
}

interface Pair {
  readonly a: Stroke;
  readonly b: Stroke;
  /** How far beside one another they point, pixels. */
  readonly error: number;
  /** From the one to the other along the line, and across it. */
  readonly by: number;
  readonly gap: number;
}

function pairsOf(upper: readonly Stroke[], lower: readonly Stroke[]): Pair[] {
  const pairs: Pair[] = [];
  let begin = 0;
  for (const a of upper) {
    if (a.isBar) continue;
    while (begin < lower.length && (lower[begin] as Stroke).to < a.from - NEAR) begin++;
    for (let n = begin; n < lower.length; n++) {
      const b = lower[n] as Stroke;
      if (b.from > a.to + NEAR) break;
      const gap = b.row - a.row;
      const by = middleOf(b) - middleOf(a);
      if (b.isBar) continue;
      const error = (Math.abs(by - a.slope * gap) + Math.abs(by + b.slope * gap)) / 2;
      pairs.push({ a, b, error, by, gap });
    }
  }
  return pairs.sort((one, other) => one.error - other.error);
}

/** Pixels along a line beyond which strokes have nothing to do with one another. */
const NEAR = 60;

/** What joins a bar along the line to what stands on its other side: a stem goes on to its nearest end. */
function atBar(a: Stroke, b: Stroke): Patch | null {
  if (!a.isBar && !b.isBar) return null;
  const aside = Math.max(a.from, b.from) - Math.min(a.to, b.to);
  if (aside > BAR_ASIDE * a.gap) return null;
  const overlap = [Math.max(a.from, b.from), Math.min(a.to, b.to)] as const;
  const endOf = (one: Stroke, other: Stroke): readonly [number, number] => {
    if (!one.isBar) return [one.from, one.to];
    if (other.isBar) return overlap;
    const wide = Math.min(one.to - one.from, other.to - other.from);
    const from = Math.min(Math.max(other.from, one.from), one.to - wide);
    return [from, from + wide];
  };
  if (a.isBar && b.isBar && overlap[0] > overlap[1]) return null;
  return { rows: [a.row, b.row], at: [endOf(a, b), endOf(b, a)] };
}

/** Curves whose lowest or highest piece is hidden. */
function closings(
  own: readonly Stroke[],
  met: Set<Stroke>,
  areOne: (one: Stroke, other: Stroke) => boolean,
): Patch[] {
  const patches: Patch[] = [];
  const plain = own.filter(({ isBar }) => !isBar);
  plain.forEach((one, n) => {
    const next = plain[n + 1];
    if (!next || next.from - one.to > CURVE * one.gap) return;
    const [right, left] = [one.slope, -next.slope];
    if (Math.max(met.has(one) ? 0 : right, met.has(next) ? 0 : left) < LEANS) return;
    if (Math.min(right, left) < STEM) return;
    if (areOne(one, next)) patches.push(closing(one, next));
  });
  for (const { at } of patches) {
    for (const one of plain) if (one.from >= at[0][0] && one.to <= at[0][1]) met.add(one);
  }
  return patches;
}

function closing(one: Stroke, next: Stroke): Patch {
  const { side, row, gap } = one;
  const thick = Math.max(1, Math.min(gap - 1, one.wide, next.wide));
  const inner = row - side * (thick + 1);
  const span = [one.from, next.to] as const;
  return { rows: side === -1 ? [row, inner] : [inner, row], at: [span, span] };
}
