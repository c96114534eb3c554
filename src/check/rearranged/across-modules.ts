import type { ModuleView } from "../rule.ts";
import { type Move, rearrangementOf } from "./rearrangement.ts";
import { type Place, placesOf } from "./word-column.ts";

/** Words of two modules that stand at one another's pins. */
export interface AcrossModules {
  /** One word of each, or all that both have. */
  readonly is: "one-word" | "all-words";
  readonly other: ModuleView;
  readonly moves: readonly Move[];
}

/**
 * What puts two modules' words right at once, where neither's own words would: the one wrong word of
 * each exchanged, or all words of the one with all of the other, pin by pin. Null where there is no
 * such module among the others, and where one of the two has more than one of them.
 */
export function acrossModules(
  view: ModuleView,
  misprinted: readonly ModuleView[],
): AcrossModules | null {
  const [found, ...more] = partnersOf(view, misprinted);
  if (!found || more.length > 0) return null;
  return partnersOf(found.other, misprinted).length === 1 ? found : null;
}

function partnersOf(view: ModuleView, misprinted: readonly ModuleView[]): readonly AcrossModules[] {
  if (rearrangementOf(view) !== null) return [];
  const mine = placesOf(view);
  return misprinted.flatMap((other): readonly AcrossModules[] => {
    if (other === view) return [];
    const theirs = placesOf(other);
    const one = oneWord(mine, theirs);
    const moves = one ?? allWords(mine, theirs);
    if (!moves || rearrangementOf(other) !== null) return [];
    return [{ is: one ? "one-word" : "all-words", other, moves }];
  });
}

function oneWord(mine: readonly Place[], theirs: readonly Place[]): readonly Move[] | null {
  const [a, ...moreOfMine] = mine.filter(({ isWrong }) => isWrong);
  const [b, ...moreOfTheirs] = theirs.filter(({ isWrong }) => isWrong);
  if (!a || !b || moreOfMine.length + moreOfTheirs.length > 0) return null;
  return a.fitsAt(b) && b.fitsAt(a) ? exchange(a, b) : null;
}

function allWords(mine: readonly Place[], theirs: readonly Place[]): readonly Move[] | null {
  if (mine.length !== theirs.length) return null;
  const moves: Move[] = [];
  for (const [index, a] of mine.entries()) {
    const b = theirs[index];
    if (!b || (a.text === null) !== (b.text === null)) return null;
    if (a.text === b.text) continue;
    if (!a.fitsAt(b) || !b.fitsAt(a)) return null;
    moves.push(...exchange(a, b));
  }
  // a word that is wrong at both modules was left where it is
  const moved = new Set(moves.map(({ from }) => from));
  return [...mine, ...theirs].every((one) => !one.isWrong || moved.has(one)) ? moves : null;
}

const exchange = (a: Place, b: Place): readonly Move[] => [
  { from: a, to: b },
  { from: b, to: a },
];
