import type { ModuleView } from "../rule.ts";
import { columnOffByOne } from "./column-off.ts";
import { type FewestMoves, fewestMoves } from "./fewest-moves.ts";
import { type FittingSlip, fittingSlips, type Slip } from "./slips.ts";
import { columnOf, type Place, placesOf, type WordColumn } from "./word-column.ts";

/** A word that belongs to another place than the one it stands at. */
export interface Move {
  readonly from: Place;
  readonly to: Place;
}

/** How a module's own words are the right ones on the wrong pins. */
export type Rearrangement =
  /** All ways that move as few words come to this. */
  | {
      readonly is: "sure";
      /** In the order of the pins. */
      readonly column: readonly Place[];
      readonly moves: readonly Move[];
      /** The one slip that does it; null where it takes several. */
      readonly slip: Slip | null;
      /** A slip of the whole column that would do as well and moves more words. */
      readonly otherwise: Slip | null;
    }
  /** Several ways move as few words and leave none contradicted. */
  | {
      readonly is: "tied";
      readonly column: readonly Place[];
      readonly count: number;
      /** What may come to stand at each place, over all these ways. */
      readonly choices: FewestMoves["choices"];
      /** The only single slip among them. */
      readonly slip: Slip | null;
    }
  /** Every word stands one pin too far in the same direction, and nothing is printed where the first belongs. */
  | { readonly is: "off-by-one"; readonly moves: readonly Move[] };

/** Null where no order of the words leaves none contradicted, or none is. */
export function rearrangementOf(view: ModuleView): Rearrangement | null {
  const known = kept.get(view);
  if (known !== undefined) return known;
  const found = lookedFor(placesOf(view));
  kept.set(view, found);
  return found;
}

const kept = new WeakMap<ModuleView, Rearrangement | null>();

function lookedFor(places: readonly Place[]): Rearrangement | null {
  const column = places.filter(({ isRead }) => isRead);
  if (!column.some(({ isWrong }) => isWrong)) return null;
  const words = columnOf(column);
  const fewest = fewestMoves(words);
  if (fewest) return rearranged(column, words, fewest);
  const moves = columnOffByOne(places);
  return moves && { is: "off-by-one", moves };
}

function rearranged(
  column: readonly Place[],
  words: WordColumn,
  fewest: FewestMoves,
): Rearrangement {
  const slips = fittingSlips(words);
  const [only, ...more] = slips.filter(({ count }) => count === fewest.count);
  const slip = more.length === 0 && only ? only.slip : null;
  if (!fewest.isOnly) {
    const { count, choices } = fewest;
    return { is: "tied", column, count, choices, slip };
  }
  const moves = fewest.places.flatMap((place, word) => {
    const [from, to] = [column[word], column[place]];
    return from && to && from !== to ? [{ from, to }] : [];
  });
  const otherwise = slips.find((one) => isOfWholeColumn(one, words) && one.count > fewest.count);
  return { is: "sure", column, moves, slip, otherwise: otherwise?.slip ?? null };
}

/** What happens to a whole list: one line too low or too high, or upside down. */
const isOfWholeColumn = ({ slip }: FittingSlip, { texts }: WordColumn) =>
  slip.first === 0 &&
  slip.last === texts.length - 1 &&
  (slip.is === "mirrored" || (slip.is === "shifted" && Math.abs(slip.by) === 1));
