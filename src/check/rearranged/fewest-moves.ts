import { cheapestAssignment, cheapestChoices } from "../assignment.ts";
import type { WordColumn } from "./word-column.ts";

const NEVER = 1e6;

/** How words are put right by moving as few of them as can be. */
export interface FewestMoves {
  readonly count: number;
  /** One way: the place of each word. Equal words stay where they can. */
  readonly places: readonly number[];
  /** The words that may come to stand at each place, over all ways that move as few. */
  readonly choices: readonly (readonly string[])[];
  /** All these ways come to the same words at the same places. */
  readonly isOnly: boolean;
}

/** Past this many words the search, which grows with its cube, takes too long. */
const MOST_WORDS = 150;

/** Null where no order of the words leaves none contradicted, or where they are right as they are. */
export function fewestMoves(column: WordColumn): FewestMoves | null {
  const { texts, wrong } = column;
  // Every wrong word has to move. Where they can trade places among themselves, no way moves fewer,
  // and none that moves as few moves any other.
  return among(column, wrong) ?? among(column, [...texts.keys()]);
}

/** Only the words at these indices may move, to the places of one another. */
function among({ texts, fits }: WordColumn, movable: readonly number[]): FewestMoves | null {
  if (movable.length > MOST_WORDS) return null;
  const cost = movable.map((word) =>
    movable.map((place) => (fits(word, place) ? Number(word !== place) : NEVER)),
  );
  const assignment = cheapestAssignment(cost);
  const count = assignment.columns.reduce((sum, to, from) => sum + (cost[from]?.[to] ?? NEVER), 0);
  if (count === 0 || count >= NEVER) return null;
  const places = [...texts.keys()];
  for (const [from, to] of assignment.columns.entries())
    places[movable[from] ?? 0] = movable[to] ?? 0;
  const choices = texts.map((text) => new Set([text]));
  for (const place of movable) choices[place]?.clear();
  for (const [from, some] of cheapestChoices(assignment).entries()) {
    for (const to of some) choices[movable[to] ?? 0]?.add(texts[movable[from] ?? 0] ?? "");
  }
  return {
    count,
    places,
    choices: choices.map((some) => [...some]),
    isOnly: choices.every(({ size }) => size === 1),
  };
}
