import type { Point } from "../../base/index.ts";
import type { Grey } from "../raster.ts";
import type { Sliced } from "../sliced.ts";
import { lineThrough, type StraightLine } from "./straight-line.ts";

/** A long straight edge. Its normal, (cos, sin), points to the brighter side. */
export interface EdgeLine extends StraightLine {
  /** How much of the line shows its edge between two of its places: `coveredBetween`. */
  readonly covered: Int32Array;
  readonly votes: number;
}

/** The side of a bright page that an edge may be. */
export type SideName = "top" | "right" | "bottom" | "left";

/** Grey levels a pixel: less is paper's grain. */
const LEAST_SLOPE = 7;
/** An edge votes for directions up to so many degrees from its own. */
const SPREAD = 3;
/** Pixels that a row of the table of votes stands for. */
const ROW = 2;
/** An edge belongs to a line from no further away: a bowed page's edge is not quite straight. */
const NEAR = 3;
const LEAST_VOTES = 0.12;
const MOST_LINES = 14;

interface Edges {
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** Whole degrees of the direction in which it gets brighter, 0 to 359. */
  readonly way: Int16Array;
}

/**
 * The longest straight edges of a small picture, by the side of a bright page that they might be: the
 * transform of P. Hough in the form of R. Duda and P. Hart (CACM 15(1), 1972), each edge voting only
 * for lines of about its own direction.
 */
export function* edgeLinesOf(grey: Grey): Sliced<Readonly<Record<SideName, readonly EdgeLine[]>>> {
  const edges = edgesOf(grey);
  yield 0.2;
  const found: Record<SideName, EdgeLine[]> = { top: [], right: [], bottom: [], left: [] };
  const peaks = peaksOf(edges, grey);
  for (const [n, peak] of peaks.entries()) {
    const lines = found[sideOf(peak)];
    if (lines.length >= MOST_LINES) continue;
    yield 0.5 + (0.5 * n) / peaks.length;
    const line = settled(peak, edges, grey);
    if (line) lines.push(line);
  }
  return found;
}

/** A page's upper edge gets brighter downwards. */
function sideOf({ cos, sin }: StraightLine): SideName {
  if (Math.abs(sin) > Math.abs(cos)) return sin > 0 ? "top" : "bottom";
  return cos > 0 ? "left" : "right";
}

/** The share of a line, from one of its points to another, where its edge is seen. */
export function coveredBetween({ covered, cos, sin }: EdgeLine, a: Point, b: Point): number {
  const middle = covered.length / 2;
  const place = ([x, y]: Point) => Math.round(y * cos - x * sin + middle);
  const last = covered.length - 1;
  const [one, other] = [place(a), place(b)];
  const from = Math.max(0, Math.min(one, other, last));
  const to = Math.min(last, Math.max(one, other, 0));
  if (one === other) return 0;
  return ((covered[to] as number) - (covered[from] as number)) / Math.abs(one - other);
}

function edgesOf({ width, height, data }: Grey): Edges {
  const [x, y, way]: [number[], number[], number[]] = [[], [], []];
  for (let row = 1; row < height - 1; row++) {
    for (let column = 1; column < width - 1; column++) {
      const at = row * width + column;
      const value = (step: number) => data[at + step] as number;
      // Sobel's weights; eight times the slope a pixel.
      const [nw, ne, sw, se] = [
        value(-width - 1),
        value(1 - width),
        value(width - 1),
        value(width + 1),
      ];
      const across = ne + 2 * value(1) + se - nw - 2 * value(-1) - sw;
      const down = sw + 2 * value(width) + se - nw - 2 * value(-width) - ne;
      if (across * across + down * down < (8 * LEAST_SLOPE) ** 2) continue;
      x.push(column);
      y.push(row);
      way.push((Math.round((Math.atan2(down, across) * 180) / Math.PI) + 360) % 360);
    }
  }
  return { x: Float32Array.from(x), y: Float32Array.from(y), way: Int16Array.from(way) };
}

/** Lines with more votes than those around them, most first. */
function peaksOf(edges: Edges, { width, height }: Grey): StraightLine[] {
  const rows = 2 * Math.ceil(Math.hypot(width, height) / ROW) + 1;
  const votes = new Int32Array(360 * rows);
  const cos = Float64Array.from({ length: 360 }, (_, way) => Math.cos((way * Math.PI) / 180));
  const sin = Float64Array.from({ length: 360 }, (_, way) => Math.sin((way * Math.PI) / 180));
  for (let edge = 0; edge < edges.x.length; edge++) {
    for (let spread = -SPREAD; spread <= SPREAD; spread++) {
      const way = ((edges.way[edge] as number) + spread + 360) % 360;
      const away =
        (edges.x[edge] as number) * (cos[way] as number) +
        (edges.y[edge] as number) * (sin[way] as number);
      const at = way * rows + Math.round(away / ROW) + (rows >> 1);
      votes[at] = (votes[at] as number) + 1;
    }
  }
  const least = Math.max(8, LEAST_VOTES * Math.min(width, height));
  const peaks: { line: StraightLine; votes: number }[] = [];
  for (let way = 0; way < 360; way++) {
    for (let row = 2; row < rows - 2; row++) {
      const here = votes[way * rows + row] as number;
      if (here < least || !isPeak(votes, rows, way, row)) continue;
      const away = (row - (rows >> 1)) * ROW;
      peaks.push({
        votes: here,
        line: { cos: cos[way] as number, sin: sin[way] as number, away },
      });
    }
  }
  return peaks.sort((a, b) => b.votes - a.votes).map(({ line }) => line);
}

function isPeak(votes: Int32Array, rows: number, way: number, row: number): boolean {
  const here = votes[way * rows + row] as number;
  for (let turn = -2; turn <= 2; turn++) {
    for (let step = -2; step <= 2; step++) {
      const other = votes[((way + turn + 360) % 360) * rows + row + step] as number;
      // Of equal ones the first counts.
      const isBefore = turn < 0 || (turn === 0 && step < 0);
      if (other > here || (isBefore && other === here)) return false;
    }
  }
  return true;
}

/** The line moved to its edges, with where along it they are. */
function settled(peak: StraightLine, edges: Edges, { width, height }: Grey): EdgeLine | null {
  let line = peak;
  let own: Point[] = [];
  for (let round = 0; round < 2; round++) {
    const way = (Math.atan2(line.sin, line.cos) * 180) / Math.PI;
    own = [];
    for (let edge = 0; edge < edges.x.length; edge++) {
      const [x, y] = [edges.x[edge] as number, edges.y[edge] as number];
      const distance = x * line.cos + y * line.sin - line.away;
      if (distance > NEAR || distance < -NEAR) continue;
      const off = Math.abs((((edges.way[edge] as number) - way + 900) % 360) - 180);
      if (off < 15) own.push([x, y]);
    }
    const fitted = lineThrough(own);
    if (!fitted || own.length < 8) return null;
    const isTurned = fitted.cos * line.cos + fitted.sin * line.sin < 0;
    line = isTurned ? { cos: -fitted.cos, sin: -fitted.sin, away: -fitted.away } : fitted;
  }
  const length = 2 * Math.ceil(Math.hypot(width, height)) + 2;
  const seen = new Uint8Array(length);
  for (const [x, y] of own) {
    const at = Math.round(y * line.cos - x * line.sin + length / 2);
    seen.fill(1, Math.max(0, at - 1), at + 2);
  }
  const covered = new Int32Array(length);
  for (let at = 1; at < length; at++) {
    covered[at] = (covered[at - 1] as number) + (seen[at - 1] as number);
  }
  return { ...line, covered, votes: own.length };
}
