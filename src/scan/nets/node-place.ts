import { distance, type Point } from "../../base/index.ts";
import type { FittedLine } from "./fitted-line.ts";
import type { GraphNode } from "./net-graph.ts";

/** In line widths, the node's own radius added: its lines cross no farther from where it was seen. */
const REACH = 1.5;
/** How little the place where it was seen counts beside a line. */
const SEEN = 0.01;

/** Where lines that meet in a node cross, with the least squares of distances to them. */
export function nodePlace(
  { at, radius }: GraphNode,
  lines: readonly { readonly line: FittedLine; readonly length: number }[],
  lineWidth: number,
): Point {
  // Normal equations of the distances to each line, in displacements from where the node was seen.
  let [xx, xy, yy, x, y] = [SEEN, 0, SEEN, 0, 0];
  for (const { line } of lines) {
    const [nx, ny] = [-line.along[1], line.along[0]];
    const far = nx * (line.at[0] - at[0]) + ny * (line.at[1] - at[1]);
    xx += nx * nx;
    xy += nx * ny;
    yy += ny * ny;
    x += nx * far;
    y += ny * far;
  }
  const det = xx * yy - xy * xy;
  const solved: Point = [at[0] + (yy * x - xy * y) / det, at[1] + (xx * y - xy * x) / det];
  if (distance(solved, at) > radius + REACH * lineWidth) return at;
  return [placeOnAxis(lines, 1) ?? solved[0], placeOnAxis(lines, 0) ?? solved[1]];
}

/** Where all level (0) or all upright (1) lines of a node lie, to the last digit; null where they differ. */
function placeOnAxis(lines: readonly { readonly line: FittedLine }[], axis: 0 | 1): number | null {
  const on = lines.filter(({ line }) => line.along[axis === 0 ? 1 : 0] === 0);
  const [first] = on;
  if (!first) return null;
  const place = first.line.at[axis === 0 ? 1 : 0];
  return on.every(({ line }) => line.at[axis === 0 ? 1 : 0] === place) ? place : null;
}
