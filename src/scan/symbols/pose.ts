import type { Box, Point } from "../../base/index.ts";
import type { QuarterTurn } from "./symbol-proposal.ts";

/** How a symbol lies on a page: mirrored across its x axis first, then stretched, turned and moved. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  /** Pixels to a unit along the symbol's x and y. */
  readonly along: number;
  readonly across: number;
  readonly turn: QuarterTurn;
  /** Degrees clockwise beyond the quarter turn: the page is askew. */
  readonly askew: number;
  readonly isMirrored: boolean;
}

/** The six numbers of a pose: a point is at [x + a px + c py, y + b px + d py]. */
export interface Matrix {
  readonly x: number;
  readonly y: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** The page's own slant is asked for again and again. */
let slant = { askew: 0, cos: 1, sin: 0 };

/** Cosine and sine of a turn. */
export function turnOf({ turn, askew }: Pick<Pose, "turn" | "askew">): readonly [number, number] {
  if (slant.askew !== askew) {
    const radians = (askew * Math.PI) / 180;
    slant = { askew, cos: Math.cos(radians), sin: Math.sin(radians) };
  }
  const { cos, sin } = slant;
  if (turn === 0) return [cos, sin];
  if (turn === 90) return [-sin, cos];
  return turn === 180 ? [-cos, -sin] : [sin, -cos];
}

export function matrixOf(pose: Pose): Matrix {
  const [cos, sin] = turnOf(pose);
  const across = pose.isMirrored ? -pose.across : pose.across;
  return {
    x: pose.x,
    y: pose.y,
    a: pose.along * cos,
    b: pose.along * sin,
    c: -across * sin,
    d: across * cos,
  };
}

export const placed = ({ x, y, a, b, c, d }: Matrix, [px, py]: Point): Point => [
  x + a * px + c * py,
  y + b * px + d * py,
];

/** The way back: from the page to the symbol's units. */
export function unplaced({ x, y, a, b, c, d }: Matrix, px: number, py: number): Point {
  const det = a * d - b * c;
  const [dx, dy] = [px - x, py - y];
  return [(d * dx - c * dy) / det, (a * dy - b * dx) / det];
}

/** Around a box of the symbol, as it lies on the page. */
export function placedBox(matrix: Matrix, { left, top, right, bottom }: Box): Box {
  const corners = [
    placed(matrix, [left, top]),
    placed(matrix, [right, top]),
    placed(matrix, [right, bottom]),
    placed(matrix, [left, bottom]),
  ];
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return {
    left: Math.min(...xs),
    top: Math.min(...ys),
    right: Math.max(...xs),
    bottom: Math.max(...ys),
  };
}

/** The pose moved so that a point of the symbol lies at a place of the page. */
export function moved(pose: Pose, own: Point, there: Point): Pose {
  const [x, y] = placed(matrixOf(pose), own);
  return { ...pose, x: pose.x + there[0] - x, y: pose.y + there[1] - y };
}
