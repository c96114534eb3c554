import type { Point } from "../../base/index.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { type Matrix, matrixOf, moved, type Pose, placed, placedBox } from "./pose.ts";
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
  /** Of where paper must be, the share that is not. */
  readonly inked: number;
  /** Line within its zone that it does not explain, to the length of its own. */
  readonly clutter: number;
}

/** A point this near to a line lies on it, and one this far does not, in line widths and pixels. */
const ON = 0.4;
const OFF = 0.85;
const PIXEL = 0.5;
/** ... and what draughtsmen differ by, units. */
const SLACK = 0.05;
/** Worse ones are not looked at further: their confidence would come to nothing. */
const LEAST_MEAN = 0.75;
const LEAST_STROKE = 0.5;
const LEAST_LEAD = 0.4;
/** The same before it lies where it fits best. */
const MOST_CLUTTER = 0.6;
const MOST_INKED = 1;
/** What counts in where a symbol fits best, beside the mean of its points. */
const LEAST_WEIGHT = 0.3;
const LEAD_WEIGHT = 0.1;
const OFF_WEIGHT = 0.4;
/** A symbol is at most so much larger or smaller than the stroke said that it was found by. */
const STRETCH = 1.3;
/** The nearest strokes of a symbol are drawn this far apart at least, in line widths. */
const APART = 1.6;

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
  if (!isApart(page, sampledOf(symbol), pose.along, pose.across)) return false;
  return marksOf(page, sampledOf(symbol), matrixOf(pose), unit, ROUGH) !== null;
}

const isApart = ({ line }: SymbolPage, { finest }: Sampled, along: number, across: number) =>
  Math.min(along * finest[0], across * finest[1]) >= APART * line;

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
    isApart(page, sampled, along, across);
  if (!mayBe(start)) return null;
  const onInk = (pose: Pose, enough: number) =>
    marksOf(page, sampled, matrixOf(pose), Math.min(pose.along, pose.across), enough);
  const climb = (from: Pose, steps: readonly number[], costOf: (pose: Pose) => number) => {
    const markOf = (pose: Pose, toBeat: number) => {
      // Nothing that the worst stroke and lead can add makes up for a lower mean.
      const marks = onInk(pose, Math.max(0.4, toBeat - LEAST_WEIGHT - LEAD_WEIGHT));
      if (!marks) return -1;
      const { mean, least, leads, off } = marks;
      const mark = mean + LEAST_WEIGHT * least + LEAD_WEIGHT * leads - OFF_WEIGHT * off;
      return mark > toBeat ? mark - costOf(pose) : -1;
    };
    let best = from;
    let mark = markOf(from, -1);
    for (const step of steps) {
      for (let round = 0; round < 4; round++) {
        const before = mark;
        for (const next of aroundOf(symbol, best, step * page.line)) {
          if (!mayBe(next)) continue;
          const there = markOf(next, mark);
          if (there > mark + 1e-4) [best, mark] = [next, there];
        }
        if (mark === before) break;
      }
    }
    return best;
  };
  const rough = climb(start, [1, 0.5], () => 0);
  const roughly = onInk(rough, LEAST_MEAN - 0.05);
  if (!roughly || roughly.least < 0.7 * LEAST_STROKE || roughly.leads < 0.7 * LEAST_LEAD) {
    return null;
  }
  // Strokes that are too short lie on the ink as well: the ink must lie on strokes, too.
  const ink = inkAround(page, symbol, rough);
  if (clutterOf(page, symbol, rough, ink) > MOST_CLUTTER) return null;
  if (inkedOf(page, sampled, rough) > MOST_INKED) return null;
  const best = climb(rough, [0.5, 0.25], (pose) => leftOver(page, symbol, pose, ink));
  const marks = onInk(best, LEAST_MEAN);
  const unit = unitOfPose(symbol, best) / page.line;
  if (unit < symbol.units[0] || unit > symbol.units[1]) return null;
  if (!marks || marks.least < LEAST_STROKE || marks.leads < LEAST_LEAD) return null;
  const [inked, clutter] = [inkedOf(page, sampled, best), clutterOf(page, symbol, best, ink)];
  return { pose: best, ...marks, inked, clutter };
}

function aroundOf(symbol: DrawnSymbol, pose: Pose, step: number): readonly Pose[] {
  const { x, y, along, across, askew } = pose;
  // A step at the ends of a symbol of about two units either way.
  const grow = step / 2;
  const stretched = symbol.isRound
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
  const turned = [
    { ...pose, askew: Math.min(MOST_ASKEW, askew + 1) },
    { ...pose, askew: Math.max(-MOST_ASKEW, askew - 1) },
  ];
  // About the middle of what is drawn, which need not be the symbol's own point.
  const { left, top, right, bottom } = symbol.body;
  const middle: Point = [(left + right) / 2, (top + bottom) / 2];
  const there = placed(matrixOf(pose), middle);
  return [
    { ...pose, x: x + step },
    { ...pose, x: x - step },
    { ...pose, y: y + step },
    { ...pose, y: y - step },
    ...[...stretched, ...turned].map((one) => moved(one, middle, there)),
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
    sum += Math.min(far, most);
    count++;
    if (far > reach) apart++;
  }
  return { sum: sum / page.line, count, apart };
}

function inkedOf(page: SymbolPage, { bare }: Sampled, pose: Pose): number {
  if (bare.length === 0) return 0;
  const { x, y, a, b, c, d } = matrixOf(pose);
  let inked = 0;
  for (let n = 0; n < bare.length; n += 2) {
    const [px, py] = [bare[n] as number, bare[n + 1] as number];
    const [there, at] = [x + a * px + c * py, y + b * px + d * py];
    const isNear = nearest(page, there, at) <= ON * page.line + PIXEL;
    if (isNear || isInk(page, there, at)) inked++;
  }
  return (2 * inked) / bare.length;
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
