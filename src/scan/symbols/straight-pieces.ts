import { Groups, type Point } from "../../base/index.ts";
import type { Skeleton } from "../lines/skeleton.ts";
import type { Sliced } from "../sliced.ts";
import { trackCorners } from "../track-corners.ts";
import { type Piece, pieceOf, type RawPiece } from "./piece.ts";
import { throughPlaces } from "./through-places.ts";

/** How far, in line widths, a straight stroke may leave the line between its ends. */
const STRAIGHT = 0.45;
/** Nodes joined by less than this, in line widths, are one place: a crossing thins to two forks. */
const ONE_PLACE = 2;
/** Shorter strokes are no feature of a symbol, in line widths. */
const SHORTEST = 2;
/** Longer ones are wires, in line widths. */
const LONGEST = 90;

/** Pixels a slice. */
const SLICE = 20_000;

/** The straight strokes of a page, those that go on through a joint or a crossing as one. */
export function* straightPieces(skeleton: Skeleton, line: number): Sliced<readonly Piece[]> {
  const { nodes, stretches, width } = skeleton;
  const places = new Groups(nodes.length);
  for (const { from, to, length } of stretches) {
    if (length < ONE_PLACE * line) places.join(from, to);
  }
  const raw: RawPiece[] = [];
  let [xs, ys] = [new Float32Array(1024), new Float32Array(1024)];
  let since = 0;
  for (const [number, { from, to, pixels, length }] of stretches.entries()) {
    since += pixels.length;
    if (since > SLICE) {
      since = 0;
      yield number / stretches.length;
    }
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
    const corners = trackCorners(xs, ys, count, Math.max(1, STRAIGHT * line));
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
  return [...throughPlaces(raw, line), ...raw.map(({ a, b }) => pieceOf(a, b))].filter(
    ({ length }) => length >= SHORTEST * line && length <= LONGEST * line,
  );
}
