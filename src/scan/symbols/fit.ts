import type { DrawnSymbol } from "./drawn-symbol.ts";
import { type Matrix, matrixOf, type Pose, placedBox } from "./pose.ts";
import { type Sampled, sampledOf } from "./sampled.ts";
import { isInk, nearest, type SymbolPage } from "./symbol-page.ts";

/** How well a symbol lies on the ink of a page; all are shares, 1 the best but for clutter. */
export interface Fit {
  readonly pose: Pose;
  /** How far its points lie from a line on average, in line widths. */
  readonly off: number;
  /** Of all its points. */
  readonly mean: number;
  /** Of its worst stroke. */
  readonly least: number;
  /** Of its worst lead; 1 where it has none. */
  readonly leads: number;
  /** Line within its zone that it does not explain, to the length of its own. */
  readonly clutter: number;
}

/** A point this near to a line lies on it, and one this far does not, in line widths and pixels. */
const ON = 0.5;
const OFF = 1;
const PIXEL = 0.5;
/** ... and what draughtsmen differ by, units. */
const SLACK = 0.06;
/** Worse ones are not looked at further. */
const LEAST_MEAN = 0.75;
const LEAST_STROKE = 0.3;
const LEAST_LEAD = 0.4;
/** A symbol is at most so much larger or smaller than the stroke said that it was found by. */
const STRETCH = 1.3;
/** The nearest strokes of a symbol are drawn this far apart at least, in line widths. */
const APART = 1.8;

interface Marks {
  /** How far its points lie from a line on average, in line widths. */
  readonly off: number;
  readonly mean: number;
  readonly least: number;
  readonly leads: number;
}

const sums = new Float64Array(128);
const counts = new Uint16Array(128);

/** Holds the points of a symbol against the page; null as soon as it can't come to `enough`. */
function marksOf(
  page: SymbolPage,
  { xs, ys, strokeOf, strokes }: Sampled,
  matrix: Matrix,
  unit: number,
  enough: number,
): Marks | null {
  const slack = Math.min(SLACK * unit, page.line);
  const on = ON * page.line + PIXEL;
  const off = OFF * page.line + PIXEL + slack;
  const most = (1 - enough) * xs.length;
  let lost = 0;
  let away = 0;
  sums.fill(0, 0, strokes.length);
  counts.fill(0, 0, strokes.length);
  for (let n = 0; n < xs.length; n++) {
    const [px, py] = [xs[n] as number, ys[n] as number];
    const x = matrix.x + matrix.a * px + matrix.c * py;
    const y = matrix.y + matrix.b * px + matrix.d * py;
    const stroke = strokeOf[n] as number;
    let good: number;
    if (strokes[stroke] === "fill" || strokes[stroke] === "dot") good = isInk(page, x, y) ? 1 : 0;
    else {
      const far = nearest(page, x, y);
      away += Math.min(far, off);
      good = far <= on ? 1 : far >= off ? 0 : (off - far) / (off - on);
    }
    lost += 1 - good;
    if (lost > most) return null;
    sums[stroke] = (sums[stroke] as number) + good;
    counts[stroke] = (counts[stroke] as number) + 1;
  }
  let [least, leads] = [1, 1];
  for (let n = 0; n < strokes.length; n++) {
    if (counts[n] === 0) continue;
    const share = (sums[n] as number) / (counts[n] as number);
    if (strokes[n] === "lead") leads = Math.min(leads, share);
    // A line along its middle is half of what is to be filled.
    else least = Math.min(least, strokes[n] === "fill" ? 2 * share - 1 : share);
  }
  return { off: away / xs.length / page.line, mean: 1 - lost / xs.length, least, leads };
}

export const unitOfPose = ({ unitBy }: DrawnSymbol, pose: Pose): number =>
  unitBy === "x" ? pose.along : pose.across;

/** Whether a symbol may lie so: the cheap question, asked of thousands of poses. */
export function mayLie(page: SymbolPage, symbol: DrawnSymbol, pose: Pose): boolean {
  const unit = Math.min(pose.along, pose.across);
  if (unit * sampledOf(symbol).finest < APART * page.line) return false;
  return marksOf(page, sampledOf(symbol), matrixOf(pose), unit, ROUGH) !== null;
}

/** Before it is moved to where it fits best. */
const ROUGH = 0.6;

/** Moves, stretches and turns a symbol to where it fits best; null where that is nowhere good. */
export function settled(page: SymbolPage, symbol: DrawnSymbol, start: Pose): Fit | null {
  const sampled = sampledOf(symbol);
  const mayBe = ({ along, across }: Pose) =>
    along < STRETCH * start.along &&
    along > start.along / STRETCH &&
    across < STRETCH * start.across &&
    across > start.across / STRETCH &&
    Math.min(along, across) * sampled.finest >= APART * page.line;
  if (!mayBe(start)) return null;
  const climb = (from: Pose, steps: readonly number[], markOf: (pose: Pose) => number) => {
    let best = from;
    let mark = markOf(from);
    for (const step of steps) {
      for (let round = 0; round < 4; round++) {
        const before = mark;
        for (const next of aroundOf(best, step * page.line, symbol.isRound === true)) {
          if (!mayBe(next)) continue;
          const there = markOf(next);
          if (there > mark + 1e-4) [best, mark] = [next, there];
        }
        if (mark === before) break;
      }
    }
    return best;
  };
  const onInk = (pose: Pose, enough: number) =>
    marksOf(page, sampled, matrixOf(pose), Math.min(pose.along, pose.across), enough);
  const forward = ({ mean, least, leads, off }: Marks) =>
    mean + 0.3 * least + 0.1 * leads - 0.4 * off;
  const rough = climb(start, [1, 0.5], (pose) => {
    const marks = onInk(pose, 0.4);
    return marks ? forward(marks) : -1;
  });
  if (!onInk(rough, LEAST_MEAN - 0.05)) return null;
  // Strokes that are too short lie on the ink as well: the ink must lie on strokes, too.
  const ink = inkAround(page, symbol, rough);
  const best = climb(rough, [0.5, 0.25], (pose) => {
    const marks = onInk(pose, 0.4);
    return marks ? forward(marks) - leftOver(page, symbol, pose, ink) : -1;
  });
  const marks = onInk(best, LEAST_MEAN);
  const unit = unitOfPose(symbol, best) / page.line;
  if (unit < symbol.units[0] || unit > symbol.units[1]) return null;
  if (!marks || marks.least < LEAST_STROKE || marks.leads < LEAST_LEAD) return null;
  return { pose: best, ...marks, clutter: clutterOf(page, symbol, best, ink) };
}

function aroundOf(pose: Pose, step: number, isRound: boolean): readonly Pose[] {
  const { x, y, along, across, askew } = pose;
  // A step at the ends of a symbol of about two units either way.
  const grow = step / 2;
  const stretched = isRound
    ? [
        { ...pose, along: along + grow, across: across + grow },
        { ...pose, along: along - grow, across: across - grow },
      ]
    : [
        { ...pose, along: along + grow },
        { ...pose, along: along - grow },
        { ...pose, across: across + grow },
        { ...pose, across: across - grow },
      ];
  return [
    { ...pose, x: x + step },
    { ...pose, x: x - step },
    { ...pose, y: y + step },
    { ...pose, y: y - step },
    ...stretched,
    { ...pose, askew: Math.min(MOST_ASKEW, askew + 1) },
    { ...pose, askew: Math.max(-MOST_ASKEW, askew - 1) },
  ];
}

export const MOST_ASKEW = 6;

/** Places of thinned line in and about a symbol's zone: x and y in turn. */
function inkAround(page: SymbolPage, { zone }: DrawnSymbol, pose: Pose): Int32Array {
  const { left, top, right, bottom } = placedBox(matrixOf(pose), zone);
  const by = page.line;
  const found: number[] = [];
  const last = Math.min(page.height - 1, bottom + by);
  for (let y = Math.max(0, Math.floor(top - by)); y <= last; y++) {
    const end = Math.min(page.width - 1, right + by);
    for (let x = Math.max(0, Math.floor(left - by)); x <= end; x++) {
      if (page.thinned.data[y * page.width + x]) found.push(x, y);
    }
  }
  return Int32Array.from(found);
}

/** How far line in the zone lies from the symbol's strokes: `sum` in line widths, `apart` beyond `reach` pixels. */
function strayOf(
  page: SymbolPage,
  symbol: DrawnSymbol,
  pose: Pose,
  ink: Int32Array,
  reach: number,
): { readonly sum: number; readonly count: number; readonly apart: number } {
  const { farFrom } = sampledOf(symbol);
  const { left, top, right, bottom } = symbol.zone;
  const unit = Math.min(pose.along, pose.across);
  const { x, y, a, b, c, d } = matrixOf(pose);
  const det = a * d - b * c;
  const hole = symbol.letter ? LETTER_ROOM ** 2 : 0;
  const most = 2 * page.line;
  let [sum, count, apart] = [0, 0, 0];
  for (let n = 0; n < ink.length; n += 2) {
    const [dx, dy] = [(ink[n] as number) - x, (ink[n + 1] as number) - y];
    const ux = (d * dx - c * dy) / det;
    const uy = (a * dy - b * dx) / det;
    if (ux < left || ux > right || uy < top || uy > bottom) continue;
    if (ux * ux + uy * uy < hole) continue;
    const far = farFrom(ux, uy) * unit;
    sum += far < most ? far : most;
    count++;
    if (far > reach) apart++;
  }
  return { sum: sum / page.line, count, apart };
}

/** How far line lies from the symbol on average, to be weighed against its marks. */
function leftOver(page: SymbolPage, symbol: DrawnSymbol, pose: Pose, ink: Int32Array): number {
  const { sum, count } = strayOf(page, symbol, pose, ink, 0);
  return count === 0 ? 0 : (0.5 * sum) / count;
}

/** Line in the zone that lies away from every stroke, to the length of the symbol's own. */
function clutterOf(page: SymbolPage, symbol: DrawnSymbol, pose: Pose, ink: Int32Array): number {
  const unit = Math.min(pose.along, pose.across);
  const reach = 0.7 * page.line + PIXEL + SLACK * unit;
  const { apart } = strayOf(page, symbol, pose, ink, reach);
  return apart / (sampledOf(symbol).length * unit);
}

/** Radius within which a machine's letter stands, units. */
export const LETTER_ROOM = 1.35;
