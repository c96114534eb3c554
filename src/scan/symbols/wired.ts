import type { DrawnSymbol } from "./drawn-symbol.ts";
import { matrixOf, type Pose, placed, placedBox } from "./pose.ts";
import { labelNear, type SymbolPage } from "./symbol-page.ts";

/** What a symbol's lead hangs on reaches this many times as far as the symbol itself. */
const FARTHER = 1.4;
/** The same for the lines on either side of a gap, ... */
const ALONE = 0.8;
/** ... which are longer than letters are high, in line widths. */
const LEAST = 10;
/** Units from the body along a lead. */
const ALONG = 0.6;

/**
 * Whether every lead goes on into something larger than the symbol: words stand alone, and what looks
 * like a symbol in them is made of their letters. `within`: line widths that a lead may be off.
 */
export function isWired(page: SymbolPage, symbol: DrawnSymbol, pose: Pose, within = 1): boolean {
  const matrix = matrixOf(pose);
  const body = placedBox(matrix, symbol.body);
  const size = Math.max(body.right - body.left, body.bottom - body.top);
  const labels = symbol.ends.map(({ at, out }) => {
    const place = placed(matrix, [at[0] + ALONG * out[0], at[1] + ALONG * out[1]]);
    return labelNear(page, place, Math.ceil(within * page.line));
  });
  // Lines that the symbol does not join are as long as they are; one that it does is longer than itself.
  const isOne = new Set(labels).size === 1;
  const least = isOne ? FARTHER * size : Math.max(LEAST * page.line, ALONE * size);
  return labels.every((label) => {
    const wire = page.components.list[label - 1];
    return wire && Math.max(wire.right - wire.left, wire.bottom - wire.top) >= least;
  });
}
