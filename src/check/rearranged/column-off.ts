import type { Move } from "./rearrangement.ts";
import type { Place } from "./word-column.ts";

/** Fewer words, or fewer wrong ones, could as well be just wrong. */
const FEWEST_WORDS = 3;
const FEWEST_WRONG = 2;

/**
 * The whole column of words stands one pin too low or too high: the word that was pushed off its end
 * is not printed at all, and a pin at the other end has none. Null where that doesn't leave every
 * word right, and where it would do so in both directions.
 */
export function columnOffByOne(places: readonly Place[]): readonly Move[] | null {
  const printed = places.filter(({ text }) => text !== null);
  const wrong = printed.filter(({ isWrong }) => isWrong);
  if (printed.length < FEWEST_WORDS || wrong.length < FEWEST_WRONG) return null;
  const [up, down] = [movedBy(places, -1), movedBy(places, 1)];
  return up && down ? null : (up ?? down);
}

function movedBy(places: readonly Place[], by: number): readonly Move[] | null {
  const moves: Move[] = [];
  for (const [index, from] of places.entries()) {
    if (from.text === null) continue;
    const to = places[index + by];
    if (!to || !from.fitsAt(to)) return null;
    moves.push({ from, to });
  }
  return moves;
}
