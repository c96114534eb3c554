import { distance, type Point } from "../../base/index.ts";
import type { Sliced } from "../sliced.ts";
import { crossingOf, type FittedLine, ontoLine, type Track } from "./fitted-line.ts";
import { withoutJumps } from "./jumps.ts";
import { levelled } from "./levels.ts";
import type { GraphNode, GraphRun } from "./net-graph.ts";
import { nodePlace } from "./node-place.ts";
import { firstOf, lastOf, type Piece, piecesOf, pointOf } from "./pieces.ts";
import { withoutRounding } from "./rounded-corners.ts";

/** A run with its straight pieces. */
export interface ShapedRun {
  readonly run: GraphRun;
  readonly track: Track;
  readonly pieces: readonly Piece[];
}

/** A net as straight lines from node to node, in pixels of the prepared page. */
export interface NetShape {
  readonly nodes: readonly { readonly node: GraphNode; readonly at: Point }[];
  /** Nodes by their numbers. */
  readonly runs: readonly {
    readonly from: number;
    readonly to: number;
    readonly points: readonly Point[];
  }[];
}

/** In line widths: the corner of two pieces lies no farther from where they end. */
const CORNER = 4.5;
/** In line widths: corners nearer to one another are one. */
const ONE_CORNER = 0.75;
/** Places of lines a slice. */
const PLACES = 8_000;

/**
 * Straight lines through the places of a net. `endOf` tells where a line in the open really ends: by
 * its last place and the way it runs there.
 */
export function* netShape(
  runs: readonly GraphRun[],
  width: number,
  lineWidth: number,
  endOf: (node: GraphNode, at: Point, onward: Point) => Point,
): Sliced<NetShape> {
  const bare: ShapedRun[] = [];
  for (let n = 0, places = 0; n < runs.length; n++) {
    const run = runs[n] as GraphRun;
    places += run.places.length;
    bare.push(shapedRun(run, width, lineWidth));
    if (places < PLACES) continue;
    places = 0;
    yield (0.8 * n) / runs.length;
  }
  const shaped = levelled(bare, lineWidth);
  const ends = new Map<GraphNode, { line: FittedLine; onward: Point; length: number }[]>();
  const put = (node: GraphNode, piece: Piece | undefined, isStart: boolean) => {
    const known = ends.get(node) ?? [];
    ends.set(node, known);
    if (!piece) return;
    const [x, y] = piece.line.along;
    known.push({ line: piece.line, onward: isStart ? [-x, -y] : [x, y], length: piece.length });
  };
  for (const { run, pieces } of shaped) {
    put(run.from, pieces[0], true);
    put(run.to, pieces.at(-1), false);
  }
  const numbers = new Map<GraphNode, number>();
  const nodes = [...ends].map(([node, lines], number) => {
    numbers.set(node, number);
    const [only] = lines;
    const isEnd = node.isFree && lines.length < 2;
    const at =
      isEnd && only
        ? endOf(node, ontoLine(only.line, node.at), only.onward)
        : nodePlace(node, lines, lineWidth);
    return { node, at };
  });
  const placeOf = (node: GraphNode) => nodes[numbers.get(node) as number]?.at as Point;
  return {
    nodes,
    runs: shaped.map(({ run, track, pieces }) => ({
      from: numbers.get(run.from) as number,
      to: numbers.get(run.to) as number,
      points: pointsOf(placeOf(run.from), placeOf(run.to), track, pieces, lineWidth),
    })),
  };
}

function shapedRun(run: GraphRun, width: number, lineWidth: number): ShapedRun {
  const step = Math.max(1, Math.round(lineWidth / 3));
  const { places } = run;
  const count = places.length === 0 ? 0 : Math.floor((places.length - 1) / step) + 1;
  const xs = new Float64Array(count);
  const ys = new Float64Array(count);
  for (let n = 0; n < count; n++) {
    const at = places[n === count - 1 ? places.length - 1 : n * step] as number;
    xs[n] = at % width;
    ys[n] = Math.floor(at / width);
  }
  const crossings = run.crossings.map(({ index, at }) => ({ index: Math.ceil(index / step), at }));
  const track = withoutJumps({ xs, ys }, crossings, lineWidth);
  return { run, track, pieces: withoutRounding(track, piecesOf(track, lineWidth), lineWidth) };
}

/** A run's ends and corners, those that lie on one another left out. */
function pointsOf(
  from: Point,
  to: Point,
  track: Track,
  pieces: readonly Piece[],
  lineWidth: number,
): Point[] {
  const points: Point[] = [from];
  pieces.slice(1).forEach((after, n) => {
    const before = pieces[n] as Piece;
    const [end, start] = [pointOf(track, lastOf(before)), pointOf(track, firstOf(after))];
    const corner = crossingOf(before.line, after.line);
    const reach = CORNER * lineWidth + distance(end, start);
    if (corner && Math.max(distance(corner, end), distance(corner, start)) <= reach)
      points.push(corner);
    else points.push(ontoLine(before.line, end), ontoLine(after.line, start));
  });
  points.push(to);
  return withoutDoubles(points, ONE_CORNER * lineWidth);
}

/** Corners so near another, or so straight, that they are none, left out; both ends stay. */
function withoutDoubles(points: readonly Point[], near: number): Point[] {
  const last = points.length - 1;
  const kept = [points[0] as Point];
  for (let n = 1; n < last; n++) {
    const [point, before] = [points[n] as Point, kept.at(-1) as Point];
    const after = points[n + 1] as Point;
    if (distance(point, before) < near || (n === last - 1 && distance(point, after) < near))
      continue;
    if (Math.abs(asideOf(point, before, after)) < near / 4) continue;
    kept.push(point);
  }
  kept.push(points[last] as Point);
  return kept;
}

/** How far a point lies beside the line between two others. */
function asideOf([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0) return Math.hypot(x - ax, y - ay);
  return ((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length;
}
