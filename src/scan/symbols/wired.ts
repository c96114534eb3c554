import type { DrawnSymbol } from "./drawn-symbol.ts";
import { matrixOf, type Pose, placed, placedBox } from "./pose.ts";
import { labelNear, type SymbolPage } from "./symbol-page.ts";

/** What a symbol's lead hangs on reaches this many times as far as the symbol itself. */
const FARTHER = 1.4;
/** Units from the body along a lead. */
const ALONG = 0.6;

/**
 * Whether every lead goes on into something larger than the symbol: words stand alone, and what looks
 * like a symbol in them is made of their letters. `within`: line widths that a lead may be off.
 */
export function isWired(
  page: SymbolPage,
  symbol: DrawnSymbol,
  pose: Pose,
  within = 1,
): boolean {
  const matrix = matrixOf(pose);
  const body = placedBox(matrix, symbol.body);
  const size = Math.max(body.right - body.left, body.bottom - body.top);
  return symbol.ends.every(({ at, out }) => {
    const place = placed(matrix, [at[0] + ALONG * out[0], at[1] + ALONG * out[1]]);
    const label = labelNear(page, place, Math.ceil(within * page.line));
    const wire = page.components.list[label - 1];
    if (!wire) return false;
    const reach = Math.max(wire.right - wire.left, wire.bottom - wire.top);
    return reach >= FARTHER * size;
  });
}
