import { addTo } from "../../base/index.ts";
import type { Sliced } from "../sliced.ts";
import { cellNumber } from "./cell-number.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { type Fit, type Fitter, unitOfPose } from "./fit.ts";
import { posesFrom } from "./guesses.ts";
import type { Pose } from "./pose.ts";
import type { SymbolPage } from "./symbol-page.ts";
import type { Thickets } from "./thickets.ts";
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
  fitter: Fitter,
  askew: number,
  symbols: readonly DrawnSymbol[],
  thickets: Thickets,
): Sliced<Fitted[]> {
  const about = { line: page.line, askew };
  const found: Fitted[] = [];
  const well = new WellFitted(page.line);
  const tried = new Set<string>();
  let since = 0;
  const loose = symbols.filter(({ hasLooseAnchors }) => hasLooseAnchors);
  const all = [...page.pieces, ...page.glyphPieces];
  for (const [n, piece] of all.entries()) {
    for (const symbol of n < page.pieces.length ? symbols : loose) {
      for (const pose of posesFrom(symbol, piece, about)) {
        if (thickets.isThick(pose) || !fitter.mayLie(symbol, pose)) continue;
        since += 12;
        const name = nameOf(page, symbol, pose);
        if (tried.has(name)) continue;
        tried.add(name);
        if (well.has(symbol, pose)) continue;
        if (!isWired(page, symbol, pose, NEARLY)) continue;
        thickets.add(pose);
        const fit = fitter.settled(symbol, pose);
        if (!fit) continue;
        found.push({ symbol, fit });
        well.add(symbol, fit);
      }
    }
    if (++since < TURN) continue;
    since = 0;
    yield n / all.length;
  }
  return found;
}

/** What lies well on the page already, by symbol and place: another stroke may lead to the same. */
class WellFitted {
  private readonly reach: number;
  private readonly cells = new Map<string, Map<number, Pose[]>>();

  /** `line`: width of the usual line, pixels. */
  constructor(line: number) {
    this.reach = 2 * line;
  }

  add(symbol: DrawnSymbol, { pose, mean, least, clutter, inked }: Fit): void {
    const isWell = mean > WELL && least > WELL && clutter < CLEAN && inked < CLEAN;
    if (!isWell) return;
    const cells = this.cells.get(symbol.name) ?? new Map<number, Pose[]>();
    this.cells.set(symbol.name, cells);
    addTo(cells, this.cellOf(pose, 0, 0), pose);
  }

  has(symbol: DrawnSymbol, pose: Pose): boolean {
    const cells = this.cells.get(symbol.name);
    if (!cells) return false;
    for (const right of BESIDE) {
      for (const down of BESIDE) {
        const near = cells.get(this.cellOf(pose, right, down));
        if (near?.some((one) => this.isSame(one, pose))) return true;
      }
    }
    return false;
  }

  private isSame(one: Pose, other: Pose): boolean {
    return (
      one.turn === other.turn &&
      one.isMirrored === other.isMirrored &&
      Math.hypot(one.x - other.x, one.y - other.y) < this.reach &&
      Math.abs(Math.log(one.along / other.along)) < 0.25 &&
      Math.abs(Math.log(one.across / other.across)) < 0.4
    );
  }

  private cellOf({ x, y }: Pose, right: number, down: number): number {
    return cellNumber(Math.floor(x / this.reach) + right, Math.floor(y / this.reach) + down);
  }
}

/** Cells next to one another. */
const BESIDE = [-1, 0, 1] as const;
/** Share of each stroke that must lie on the page. */
const WELL = 0.93;
/** Clutter, and ink where there must be paper, for which a better pose is still looked. */
const CLEAN = 0.06;

/** The same for poses that come to the same when they are moved to where they fit best. */
function nameOf(page: SymbolPage, symbol: DrawnSymbol, pose: Pose): string {
  const near = (value: number) => Math.round(value / page.line);
  const size = Math.round(8 * Math.log2(unitOfPose(symbol, pose)));
  const { x, y, turn, isMirrored, along, across } = pose;
  const height = Math.round(6 * Math.log2(across / along));
  return `${symbol.name} ${near(x)} ${near(y)} ${turn} ${isMirrored} ${size} ${height}`;
}
