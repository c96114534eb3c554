import { boundsOf, distance, type Point } from "../base/index.ts";
import type { Cavity, Plug } from "../job/index.ts";
import { spacingOf } from "./outline.ts";

export type Turn = "clockwise" | "anticlockwise";

export const otherTurn = (turn: Turn): Turn =>
  turn === "clockwise" ? "anticlockwise" : "clockwise";

/** Share of the spacing within which a place marked by hand lies on the outermost ring (our own). */
const NEAR = 0.3;
/** Two cavities run either way, and three may stand anyhow. */
const LEAST_ON_RING = 4;
const LETTER = /^[A-Z]$/;

/**
 * Which way single letters run round the outermost ring of a face, as drawn and from the cavity at
 * its key on; null where they are no letters in a row, lie in no ring, do not begin at a key, or
 * where the places are a neutral drawing.
 */
export function turnOfLetters({ cavities, keys = [], neutral }: Plug): Turn | null {
  const [key, second] = keys.filter(({ kind }) => kind === "key");
  if (neutral || !key || second || !cavities.every(({ mark }) => LETTER.test(mark))) return null;
  const box = boundsOf(cavities.map(({ at }) => at));
  if (!box) return null;
  const middle: Point = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const far = (at: Point) => distance(at, middle);
  const radius = Math.max(...cavities.map(({ at }) => far(at)));
  const near = spacingOf(cavities) * NEAR;
  const ring = cavities
    .filter(({ at }) => radius - far(at) <= near)
    .toSorted((a, b) => (a.mark < b.mark ? -1 : 1));
  if (ring.length < LEAST_ON_RING || new Set(ring.map(({ mark }) => mark)).size < ring.length)
    return null;
  return isFirstAt(key.at, ring) ? turnOf(ring, middle) : null;
}

/** Nothing else on the ring lies nearer to the key, and one letter is the first of all. */
function isFirstAt(key: Point, [first, ...others]: readonly Cavity[]): boolean {
  if (first?.mark !== "A") return false;
  const apart = distance(first.at, key);
  // a key may sit between the last and the first
  return others.filter(({ at }) => distance(at, key) < apart * 0.99).length === 0;
}

/** One way round from each to the next, and not more than once round in all. */
function turnOf(ring: readonly Cavity[], [x, y]: Point): Turn | null {
  const angles = ring.map(({ at }) => Math.atan2(at[1] - y, at[0] - x));
  const round = 2 * Math.PI;
  const clockwise = angles.map((angle, index) => {
    const next = angles[(index + 1) % angles.length] as number;
    return (((next - angle) % round) + round) % round;
  });
  const all = clockwise.reduce((sum, step) => sum + step, 0);
  const rounds = Math.round(all / round);
  if (rounds === 1) return "clockwise";
  return rounds === ring.length - 1 ? "anticlockwise" : null;
}
