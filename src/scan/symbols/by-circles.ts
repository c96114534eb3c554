import type { Sliced } from "../sliced.ts";
import type { Fitted } from "./by-strokes.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import type { Fitter } from "./fit.ts";
import { type Hole, middleOf, sizeOf } from "./holes.ts";
import { nearest, type SymbolPage } from "./symbol-page.ts";

/** A circle's width and height are the same within this share. */
const ROUND = 0.14;
/** Share of the rim that must be there. */
const RIM = 0.85;
/** Diameters, in line widths. */
const LEAST = 5;
const MOST = 60;

/** Holes a slice. */
const SLICE = 40;

/** Round symbols whose rim shuts in one piece of paper: what stands within touches it nowhere. */
export function* fitByCircles(
  page: SymbolPage,
  fitter: Fitter,
  askew: number,
  holes: readonly Hole[],
  symbols: readonly DrawnSymbol[],
): Sliced<Fitted[]> {
  const round = symbols.filter(({ isRound }) => isRound);
  const found: Fitted[] = [];
  for (const [n, hole] of holes.entries()) {
    if (n % SLICE === SLICE - 1) yield n / holes.length;
    const [width, height] = sizeOf(hole);
    const size = (width + height) / 2;
    if (size < LEAST * page.line || size > MOST * page.line) continue;
    if (Math.abs(width - height) > ROUND * size + 1) continue;
    const [x, y] = middleOf(hole);
    const radius = (size + page.line) / 2;
    if (rimOf(page, x, y, radius) < RIM) continue;
    for (const symbol of round) {
      const unit = radius / symbol.body.right;
      for (const turn of symbol.turns) {
        const start = { x, y, along: unit, across: unit, turn, askew, isMirrored: false };
        const fit = fitter.settled(symbol, start);
        if (fit) found.push({ symbol, fit });
      }
    }
  }
  return found;
}

function rimOf(page: SymbolPage, x: number, y: number, radius: number): number {
  const steps = 32;
  let on = 0;
  for (let n = 0; n < steps; n++) {
    const angle = (2 * Math.PI * n) / steps;
    const there = nearest(page, x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    if (there <= 0.8 * page.line + 0.5) on++;
  }
  return on / steps;
}
