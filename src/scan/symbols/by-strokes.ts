import type { Sliced } from "../sliced.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { type Fit, mayLie, settled, unitOfPose } from "./fit.ts";
import { posesFrom } from "./guesses.ts";
import type { Pose } from "./pose.ts";
import type { SymbolPage } from "./symbol-page.ts";
import { isWired } from "./wired.ts";

export interface Fitted {
  readonly symbol: DrawnSymbol;
  readonly fit: Fit;
}

/** Line widths by which a pose may still lie beside the lines that it is to be wired to. */
const NEARLY = 2;

/** Strokes of a page that are tried between two slices. */
const TURN = 150;

/** Every symbol that lies well on the page with one of its anchors on one of the page's strokes. */
export function* fitByStrokes(
  page: SymbolPage,
  askew: number,
  symbols: readonly DrawnSymbol[],
): Sliced<Fitted[]> {
  const about = { line: page.line, askew };
  const found: Fitted[] = [];
  const tried = new Set<string>();
  let since = 0;
  const loose = symbols.filter(({ hasLooseAnchors }) => hasLooseAnchors);
  const all = [...page.pieces, ...page.glyphPieces];
  for (const [n, piece] of all.entries()) {
    for (const symbol of n < page.pieces.length ? symbols : loose) {
      for (const pose of posesFrom(symbol, piece, about)) {
        if (!mayLie(page, symbol, pose)) continue;
        since += 12;
        const name = nameOf(page, symbol, pose);
        if (tried.has(name)) continue;
        tried.add(name);
        if (isFoundAlready(page, found, symbol, pose)) continue;
        if (!isWired(page, symbol, pose, NEARLY)) continue;
        const fit = settled(page, symbol, pose);
        if (fit) found.push({ symbol, fit });
      }
    }
    if (++since < TURN) continue;
    since = 0;
    yield n / all.length;
  }
  return found;
}

/** Whether it has been found to lie well there, by another stroke. */
function isFoundAlready(
  { line }: SymbolPage,
  found: readonly Fitted[],
  symbol: DrawnSymbol,
  pose: Pose,
): boolean {
  return found.some(
    ({ symbol: other, fit }) =>
      other === symbol &&
      fit.pose.turn === pose.turn &&
      fit.pose.isMirrored === pose.isMirrored &&
      fit.mean > WELL &&
      fit.least > WELL &&
      Math.hypot(fit.pose.x - pose.x, fit.pose.y - pose.y) < 2 * line &&
      Math.abs(Math.log(fit.pose.along / pose.along)) < 0.25 &&
      Math.abs(Math.log(fit.pose.across / pose.across)) < 0.4,
  );
}

const WELL = 0.93;

/** The same for poses that come to the same when they are moved to where they fit best. */
function nameOf(page: SymbolPage, symbol: DrawnSymbol, pose: Pose): string {
  const near = (value: number) => Math.round(value / page.line);
  const size = Math.round(8 * Math.log2(unitOfPose(symbol, pose)));
  const { x, y, turn, isMirrored, along, across } = pose;
  const height = Math.round(6 * Math.log2(across / along));
  return `${symbol.name} ${near(x)} ${near(y)} ${turn} ${isMirrored} ${size} ${height}`;
}
