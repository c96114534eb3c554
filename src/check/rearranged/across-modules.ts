import type { ModuleView } from "../rule.ts";
import { type FewestMoves, fewestMoves } from "./fewest-moves.ts";
import { type Move, rearrangementOf } from "./rearrangement.ts";
import { columnOf, type Place, placesOf } from "./word-column.ts";

/** Words of two modules that stand at one another's pins. */
export type AcrossModules = { readonly other: ModuleView } & (
  | {
      /** One word of each, the wrong ones of both, or all that both have, pin by pin. */
      readonly is: "one-word" | "wrong-words" | "all-words";
      readonly moves: readonly Move[];
      /** No other way moves as few and lets a pin's word mean something else. */
      readonly isSure: boolean;
      /** All words of both, exchanged, would do as well and move more. */
      readonly orAll: boolean;
    }
  /** Several ways move the wrong words of both to one another's places, and none of the rest. */
  | {
      readonly is: "tied";
      readonly column: readonly Place[];
      readonly count: number;
      readonly choices: FewestMoves["choices"];
      readonly orAll: boolean;
    }
);

type Crossing = AcrossModules extends infer A
  ? A extends AcrossModules
    ? Omit<A, "other">
    : never
  : never;

/**
 * What puts two modules' words right at once, where neither's own words would: their wrong words
 * exchanged among the two, or all words of the one with all of the other, pin by pin. Null where there
 * is no such module among the others, and where one of the two has more than one of them.
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
  const own = misprinted.indexOf(view);
  return misprinted.flatMap((other, index): readonly AcrossModules[] => {
    if (other === view || rearrangementOf(other) !== null) return [];
    const crossing = own < index ? crossingOf(view, other) : crossingOf(other, view);
    return crossing ? [{ other, ...crossing }] : [];
  });
}

/** Every module is held against every other: what was found of two holds while both are the same. */
const kept = new WeakMap<ModuleView, WeakMap<ModuleView, Crossing | null>>();

function crossingOf(one: ModuleView, other: ModuleView): Crossing | null {
  const known = kept.get(one) ?? new WeakMap<ModuleView, Crossing | null>();
  kept.set(one, known);
  let found = known.get(other);
  if (found === undefined) {
    found = lookedFor(placesOf(one), placesOf(other));
    known.set(other, found);
  }
  return found;
}

function lookedFor(mine: readonly Place[], theirs: readonly Place[]): Crossing | null {
  const all = allWords(mine, theirs);
  const column = [...mine, ...theirs].filter(({ isWrong }) => isWrong);
  // Their own wrong words put neither right, so that some of them change the module.
  const fewest = fewestMoves(columnOf(column));
  if (!fewest) {
    // Right words are moved with it, or words that nobody can read.
    return all && { is: "all-words", moves: all, isSure: false, orAll: false };
  }
  const isWhole = all !== null && all.length === fewest.count;
  const orAll = all !== null && !isWhole;
  if (isWhole)
    return {
      is: all.length === 2 ? "one-word" : "all-words",
      moves: all,
      isSure: meansTheSame(column, fewest),
      orAll,
    };
  const { count, choices } = fewest;
  if (!fewest.isOnly) return { is: "tied", column, count, choices, orAll };
  const moves = fewest.places.flatMap((place, word) => {
    const [from, to] = [column[word], column[place]];
    return from && to && from !== to ? [{ from, to }] : [];
  });
  return { is: count === 2 ? "one-word" : "wrong-words", moves, isSure: true, orAll };
}

/** Whichever way it was, every pin comes to a word that means the same. */
function meansTheSame(column: readonly Place[], { choices }: FewestMoves): boolean {
  const meaningOf = new Map(column.map(({ text, meaning }) => [text, meaning]));
  return choices.every((texts) => new Set(texts.map((text) => meaningOf.get(text))).size === 1);
}

function allWords(mine: readonly Place[], theirs: readonly Place[]): readonly Move[] | null {
  if (mine.length !== theirs.length) return null;
  const moves: Move[] = [];
  for (const [index, a] of mine.entries()) {
    const b = theirs[index];
    if (!b || (a.text === null) !== (b.text === null)) return null;
    if (a.text === b.text) continue;
    if (!a.fitsAt(b) || !b.fitsAt(a)) return null;
    moves.push({ from: a, to: b }, { from: b, to: a });
  }
  // a word that is wrong at both modules was left where it is
  const moved = new Set(moves.map(({ from }) => from));
  return [...mine, ...theirs].every((one) => !one.isWrong || moved.has(one)) ? moves : null;
}
