import type { DrawnSymbol } from "./drawn-symbol.ts";
import type { Fit } from "./fit.ts";

/** How good a find looks, 0 to 1, before it is said how often such finds are right. */
export function markOf(symbol: DrawnSymbol, fit: Fit, letter: number): number {
  const good = (value: number, none: number, all: number) =>
    Math.min(1, Math.max(0, (value - none) / (all - none)));
  const parts = [
    good(fit.mean, 0.7, 0.93),
    good(fit.least, 0.45, 0.85),
    good(fit.leads, 0.3, 0.8),
    1 - good(fit.clutter, 0.06, 0.4),
    good(letter, 0.3, 0.75),
  ];
  const product = parts.reduce((all, one) => all * (0.15 + 0.85 * one), 1);
  return Math.min(symbol.most ?? 1, product);
}
