import { addTo, type Point } from "../../base/index.ts";
import { CROWDED } from "../lines/fork-places.ts";
import { type Piece, pieceOf, type RawPiece } from "./piece.ts";

/** Two strokes that turn by less than this go on through a place as one, degrees. */
const ON = 24;
const LINED_UP = -Math.cos((ON * Math.PI) / 180);

/** One end of a stroke at a place, as a number: twice the stroke's, and one for its second end. */
interface PieceEnd {
  readonly end: number;
  readonly out: Point;
}

/** Strokes that go on straight through a place, as one each. */
export function throughPlaces(raw: readonly RawPiece[], line: number): Piece[] {
  const next = nextEnds(raw, line);
  const done = new Uint8Array(raw.length);
  const at = (end: number) => (end & 1 ? raw[end >> 1]?.b : raw[end >> 1]?.a) as Point;
  return raw.flatMap((_, n) => {
    if (done[n] || ((next[2 * n] as number) < 0 && (next[2 * n + 1] as number) < 0)) return [];
    return [pieceOf(at(lastEnd(2 * n, next, done)), at(lastEnd(2 * n + 1, next, done)))];
  });
}

/** Of each end the end of the stroke that goes on from it; -1 for none. */
function nextEnds(raw: readonly RawPiece[], line: number): Int32Array {
  const places = new Map<number, PieceEnd[]>();
  raw.forEach(({ a, b, from, to }, n) => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length < line) return;
    const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    if (from >= 0) addTo(places, from, { end: 2 * n, out: along });
    if (to >= 0) addTo(places, to, { end: 2 * n + 1, out: [-along[0], -along[1]] });
  });
  const next = new Int32Array(2 * raw.length).fill(-1);
  for (const ends of places.values()) {
    if (ends.length > CROWDED) continue;
    const pairs = ends.flatMap((one, n) =>
      ends.slice(n + 1).flatMap((other) => {
        const dot = one.out[0] * other.out[0] + one.out[1] * other.out[1];
        return dot < LINED_UP ? [{ one, other, dot }] : [];
      }),
    );
    // The straightest first; each end goes on once.
    for (const { one, other } of pairs.sort((p, q) => p.dot - q.dot)) {
      if ((next[one.end] as number) >= 0 || (next[other.end] as number) >= 0) continue;
      next[one.end] = other.end;
      next[other.end] = one.end;
    }
  }
  return next;
}

/** The last end that is reached over one end of a stroke; marks the strokes on the way. */
function lastEnd(start: number, next: Int32Array, done: Uint8Array): number {
  let end = start;
  done[end >> 1] = 1;
  for (;;) {
    const on = next[end] as number;
    if (on < 0 || done[on >> 1]) return end;
    end = on ^ 1;
    done[end >> 1] = 1;
  }
}
