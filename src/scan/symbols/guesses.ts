import type { Point } from "../../base/index.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { MOST_ASKEW } from "./fit.ts";
import { moved, type Pose } from "./pose.ts";
import type { Piece } from "./straight-pieces.ts";
import type { QuarterTurn } from "./symbol-proposal.ts";

/**
 * Every way in which a symbol lies on a page if one stroke of the page is one of its anchors: the
 * stroke says where, how large and how turned.
 */
export function posesFrom(
  symbol: DrawnSymbol,
  piece: Piece,
  page: { readonly line: number; readonly askew: number },
): Pose[] {
  const found: Pose[] = [];
  const [least, most] = symbol.units;
  for (const [a, b] of symbol.anchors) {
    for (const height of symbol.heights) {
      const [dx, dy] = [b[0] - a[0], (b[1] - a[1]) * height];
      const unit = piece.length / Math.hypot(dx, dy);
      const [along, across] = [unit, unit * height];
      const said = (symbol.unitBy === "x" ? along : across) / page.line;
      if (said < least || said > most) continue;
      for (const isMirrored of symbol.mirror === "none" ? [false] : [false, true]) {
        const own = (Math.atan2(isMirrored ? -dy : dy, dx) * 180) / Math.PI;
        for (const isFlipped of [false, true]) {
          const [from, to] = isFlipped ? [piece.to, piece.from] : [piece.from, piece.to];
          const there = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
          const turned = there - own - page.askew;
          const quarter = Math.round(turned / 90);
          const turn = ((((quarter % 4) + 4) % 4) * 90) as QuarterTurn;
          if (Math.abs(turned - quarter * 90) > TURNED || !symbol.turns.includes(turn)) continue;
          const pose = { x: 0, y: 0, along, across, turn, askew: page.askew, isMirrored };
          found.push(moved(pose, middle(a, b), middle(from, to)));
        }
      }
    }
  }
  return found;
}

/** How far, in degrees, a stroke may be turned from where the anchor would lie. */
const TURNED = MOST_ASKEW + 4;

const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
