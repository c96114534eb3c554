import type { DrawnSymbol } from "./drawn-symbol.ts";
import type { Fit } from "./fit.ts";

/**
 * How good a find looks, and the share of such finds that were right on drawn pages of known symbols, in
 * several hands and sizes, copied badly and well. In between in a straight line.
 */
const SHARES: readonly (readonly [looks: number, right: number])[] = [
  [0, 0],
  [0.3, 0.05],
  [0.5, 0.2],
  [0.8, 0.35],
  [0.95, 0.6],
  [0.99, 0.9],
  [1, 0.97],
];

/** What a line runs through may be made of it in part. */
const CROSSED = 0.7;

/**
 * Strokes that lie so far beside the ink on average, in line widths, are straight ones on what is bent: the
 * rings of a target, a stain's edge. Of the right ones on drawn pages hardly one lies farther off than 0.3.
 */
const BESIDE = 0.33;
const BENT = 0.7;

/** How sure a find is, 0 to 1: of all that have 0.9, nine in ten are right. */
export function confidenceOf(symbol: DrawnSymbol, fit: Fit, letter: number): number {
  const bent = fit.off > BESIDE ? BENT : 1;
  const most = Math.min(symbol.most ?? 1, fit.isCrossed ? CROSSED : 1, bent);
  return Math.min(most, shareAt(looksOf(fit, letter)));
}

function looksOf(fit: Fit, letter: number): number {
  const good = (value: number, none: number, all: number) =>
    Math.min(1, Math.max(0, (value - none) / (all - none)));
  const parts = [
    good(fit.mean, 0.7, 0.93),
    good(fit.least, 0.45, 0.85),
    good(fit.leads, 0.3, 0.8),
    1 - good(fit.clutter, 0.06, 0.4),
    1 - good(fit.inked, 0.1, 0.5),
    good(letter, 0.3, 0.75),
  ];
  return parts.reduce((all, one) => all * (0.15 + 0.85 * one), 1);
}

function shareAt(looks: number): number {
  const at = SHARES.findIndex(([to]) => to >= looks);
  const [to, right] = SHARES[at] ?? [1, 1];
  const [from, before] = SHARES[at - 1] ?? [0, 0];
  return to === from ? right : before + ((right - before) * (looks - from)) / (to - from);
}
