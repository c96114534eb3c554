import { Groups, type Point } from "../../base/index.ts";
import type { Skeleton } from "../lines/skeleton.ts";

/** A straight stroke of a thinned line, pixels. */
export interface Piece {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

/** How far, in line widths, a straight stroke may leave the line between its ends. */
const STRAIGHT = 0.45;
/** Nodes joined by less than this, in line widths, are one place: a crossing thins to two forks. */
const ONE_PLACE = 2;
/** Two strokes that turn by less than this go on through a place as one, degrees. */
const ON = 24;
/** Shorter strokes are no feature of a symbol, in line widths. */
const SHORTEST = 2;
/** Longer ones are wires, in line widths. */
const LONGEST = 90;

interface RawPiece {
  readonly a: Point;
  readonly b: Point;
  /** Places of its ends; -1 at a corner within a line. */
  readonly from: number;
  readonly to: number;
}

/** The straight strokes of a page, those that go on through a joint or a crossing as one. */
export function straightPieces(skeleton: Skeleton, line: number): readonly Piece[] {
  const { nodes, stretches, width } = skeleton;
  const places = new Groups(nodes.length);
  for (const { from, to, length } of stretches) {
    if (length < ONE_PLACE * line) places.join(from, to);
  }
  const raw: RawPiece[] = [];
  let [xs, ys] = [new Float32Array(1024), new Float32Array(1024)];
  for (const { from, to, pixels, length } of stretches) {
    if (length < ONE_PLACE * line && from !== to && pixels.length > 0) {
      const [a, b] = [nodes[from], nodes[to]];
      // A short stroke with a free end is still a stroke.
      if (a && b && a.stretches.length > 1 && b.stretches.length > 1) continue;
    }
    const [a, b] = [nodes[from], nodes[to]];
    if (!a || !b) continue;
    const count = pixels.length + 2;
    if (count > xs.length) [xs, ys] = [new Float32Array(2 * count), new Float32Array(2 * count)];
    [xs[0], ys[0]] = [a.x, a.y];
    for (let n = 0; n < pixels.length; n++) {
      const at = pixels[n] as number;
      xs[n + 1] = at % width;
      ys[n + 1] = Math.floor(at / width);
    }
    [xs[count - 1], ys[count - 1]] = [b.x, b.y];
    const corners = cornersOf(xs, ys, count, Math.max(1, STRAIGHT * line));
    const place = (n: number): Point => {
      const at = corners[n] as number;
      return [xs[at] as number, ys[at] as number];
    };
    for (let n = 1; n < corners.length; n++) {
      raw.push({
        a: place(n - 1),
        b: place(n),
        from: n === 1 ? places.of(from) : -1,
        to: n === corners.length - 1 ? places.of(to) : -1,
      });
    }
  }
  return [...merged(raw, line), ...raw.map(({ a, b }) => pieceOf(a, b))].filter(
    ({ length }) => length >= SHORTEST * line && length <= LONGEST * line,
  );
}

/** Strokes in one line with so short a break between them are one as well, in line widths. */
const BREAK = 4;
/** How far, in line widths, the second may begin beside the first's line. */
const BESIDE = 1;

/** Two strokes as one where a third that crosses them has bent the thinned line, or print is broken. */
export function bridged(pieces: readonly Piece[], line: number): Piece[] {
  const ends = pieces.flatMap(({ from, to, length }) => {
    const out: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    return [
      { at: to, other: from, out, length },
      { at: from, other: to, out: [-out[0], -out[1]] as Point, length },
    ];
  });
  ends.sort((a, b) => a.at[0] - b.at[0]);
  const reach = BREAK * line;
  const found: Piece[] = [];
  ends.forEach((one, n) => {
    for (let m = n + 1; m < ends.length; m++) {
      const other = ends[m] as typeof one;
      const [dx, dy] = [other.at[0] - one.at[0], other.at[1] - one.at[1]];
      if (dx > reach) break;
      if (Math.abs(dy) > reach) continue;
      if (one.out[0] * other.out[0] + one.out[1] * other.out[1] > LINED_UP) continue;
      // Ahead of the one, and behind the other.
      if (dx * one.out[0] + dy * one.out[1] < 0.2 * line) continue;
      const [ax, ay] = [other.other[0] - one.other[0], other.other[1] - one.other[1]];
      const length = Math.hypot(ax, ay);
      if (length < one.length + other.length || length > MOST_BRIDGED * line) continue;
      const off = (p: Point) =>
        Math.abs((p[0] - one.other[0]) * ay - (p[1] - one.other[1]) * ax) / length;
      if (Math.max(off(one.at), off(other.at)) > BESIDE * line) continue;
      found.push(pieceOf(one.other, other.other));
    }
  });
  return found;
}

/** Cosine between the ways in which two strokes end that face one another: within 16 degrees. */
const LINED_UP = -0.96;
/** Longer strokes are found without. */
const MOST_BRIDGED = 40;

const pieceOf = (from: Point, to: Point): Piece => ({
  from,
  to,
  length: Math.hypot(to[0] - from[0], to[1] - from[1]),
});

/** Numbers of the points where a line turns, ends included (Douglas and Peucker 1973). */
function cornersOf(xs: Float32Array, ys: Float32Array, count: number, tolerance: number): number[] {
  const kept = [0, count - 1];
  const open: [number, number][] = [[0, count - 1]];
  for (let span = open.pop(); span; span = open.pop()) {
    const [first, last] = span;
    const [ax, ay] = [xs[first] as number, ys[first] as number];
    const [dx, dy] = [(xs[last] as number) - ax, (ys[last] as number) - ay];
    const length = Math.hypot(dx, dy);
    let [worst, far] = [-1, length < 1 ? tolerance : tolerance * length];
    for (let n = first + 1; n < last; n++) {
      const [x, y] = [(xs[n] as number) - ax, (ys[n] as number) - ay];
      const off = length < 1 ? Math.hypot(x, y) : Math.abs(x * dy - y * dx);
      if (off > far) [worst, far] = [n, off];
    }
    if (worst < 0) continue;
    kept.push(worst);
    open.push([first, worst], [worst, last]);
  }
  return kept.sort((a, b) => a - b);
}

/** Strokes that go on straight through a place, as one each. */
function merged(raw: readonly RawPiece[], line: number): Piece[] {
  const ends = new Map<number, { piece: number; out: Point; end: 0 | 1 }[]>();
  raw.forEach((piece, n) => {
    const length = Math.hypot(piece.b[0] - piece.a[0], piece.b[1] - piece.a[1]);
    if (length < line) return;
    const along: Point = [(piece.b[0] - piece.a[0]) / length, (piece.b[1] - piece.a[1]) / length];
    for (const [place, end] of [
      [piece.from, 0],
      [piece.to, 1],
    ] as const) {
      if (place < 0) continue;
      const out: Point = end === 0 ? along : [-along[0], -along[1]];
      const known = ends.get(place);
      if (known) known.push({ piece: n, out, end });
      else ends.set(place, [{ piece: n, out, end }]);
    }
  });
  const next = new Map<string, { piece: number; end: 0 | 1 }>();
  const least = -Math.cos((ON * Math.PI) / 180);
  for (const here of ends.values()) {
    const pairs: { i: number; j: number; dot: number }[] = [];
    for (let i = 0; i < here.length; i++) {
      for (let j = i + 1; j < here.length; j++) {
        const [p, q] = [here[i], here[j]];
        if (!p || !q) continue;
        const dot = p.out[0] * q.out[0] + p.out[1] * q.out[1];
        if (dot < least) pairs.push({ i, j, dot });
      }
    }
    pairs.sort((p, q) => p.dot - q.dot);
    const used = new Set<number>();
    for (const { i, j } of pairs) {
      if (used.has(i) || used.has(j)) continue;
      used.add(i).add(j);
      const [p, q] = [here[i], here[j]];
      if (!p || !q) continue;
      next.set(`${p.piece}:${p.end}`, q);
      next.set(`${q.piece}:${q.end}`, p);
    }
  }
  const done = new Set<number>();
  const found: Piece[] = [];
  raw.forEach((_, n) => {
    if (done.has(n)) return;
    if (!next.has(`${n}:0`) && !next.has(`${n}:1`)) return;
    const first = farEnd(n, 0, next);
    const last = farEnd(n, 1, next);
    for (const piece of [...first.passed, n, ...last.passed]) done.add(piece);
    const at = ({ piece, end }: { piece: number; end: 0 | 1 }) =>
      (end === 0 ? raw[piece]?.a : raw[piece]?.b) as Point;
    found.push(pieceOf(at(first), at(last)));
  });
  return found;
}

/** The last piece, and the end of it, that is reached over one end of a piece. */
function farEnd(
  start: number,
  over: 0 | 1,
  next: ReadonlyMap<string, { piece: number; end: 0 | 1 }>,
): { piece: number; end: 0 | 1; passed: number[] } {
  let [piece, end] = [start, over];
  const passed: number[] = [];
  for (;;) {
    const on = next.get(`${piece}:${end}`);
    if (!on || on.piece === start || passed.includes(on.piece)) return { piece, end, passed };
    piece = on.piece;
    end = on.end === 0 ? 1 : 0;
    passed.push(piece);
  }
}
