import type { Point } from "../../base/index.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { MOST_ASKEW } from "./loose-pose.ts";
import type { Piece } from "./piece.ts";
import { moved, type Pose } from "./pose.ts";
import type { QuarterTurn } from "./symbol-proposal.ts";

/** One way in which a stroke of a page may be an anchor of a symbol. */
interface Guess {
  /** Middle of the anchor, units. */
  readonly middle: Point;
  /** Of the anchor at this height, units. */
  readonly length: number;
  readonly height: number;
  readonly isMirrored: boolean;
  /** The way from its one end to the other, degrees clockwise. */
  readonly way: number;
}

const known = new WeakMap<DrawnSymbol, readonly Guess[]>();

function guessesOf(symbol: DrawnSymbol): readonly Guess[] {
  const found = known.get(symbol);
  if (found) return found;
  const mirrored = symbol.mirror === "none" ? [false] : [false, true];
  const made = symbol.anchors.flatMap(([a, b]) =>
    symbol.heights.flatMap((height) =>
      mirrored.map((isMirrored): Guess => {
        const [dx, dy] = [b[0] - a[0], (b[1] - a[1]) * height];
        return {
          middle: middle(a, b),
          length: Math.hypot(dx, dy),
          height,
          isMirrored,
          way: degrees(dx, isMirrored ? -dy : dy),
        };
      }),
    ),
  );
  known.set(symbol, made);
  return made;
}

/**
 * Every way in which a symbol lies on a page if one stroke of the page is one of its anchors: the
 * stroke says where, how large and how turned.
 */
export function posesFrom(
  symbol: DrawnSymbol,
  { from, to, length }: Piece,
  page: { readonly line: number; readonly askew: number },
): Pose[] {
  const found: Pose[] = [];
  const [least, most] = symbol.units;
  const way = degrees(to[0] - from[0], to[1] - from[1]) - page.askew;
  for (const guess of guessesOf(symbol)) {
    const along = length / guess.length;
    const across = along * guess.height;
    const said = (symbol.unitBy === "x" ? along : across) / page.line;
    if (said < least || said > most) continue;
    const turned = way - guess.way;
    const quarter = Math.round(turned / 90);
    if (Math.abs(turned - quarter * 90) > TURNED) continue;
    for (const half of [0, 2]) {
      const turn = (((((quarter + half) % 4) + 4) % 4) * 90) as QuarterTurn;
      if (!symbol.turns.includes(turn)) continue;
      const { isMirrored } = guess;
      const pose = { x: 0, y: 0, along, across, turn, askew: page.askew, isMirrored };
      found.push(moved(pose, guess.middle, middle(from, to)));
    }
  }
  return found;
}

/** How far, in degrees, a stroke may be turned from where the anchor would lie. */
const TURNED = MOST_ASKEW + 4;

const degrees = (dx: number, dy: number): number => (Math.atan2(dy, dx) * 180) / Math.PI;

const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
