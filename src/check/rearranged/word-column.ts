import type { PartOf } from "../../job/index.ts";
import { meaningFits, printedWord, type Role } from "../../roles/index.ts";
import type { ModuleView } from "../rule.ts";

/** A printed word of a module, or nothing printed, at its pin. */
export interface Place {
  readonly module: PartOf<"module">;
  readonly pin: string;
  readonly role: Role;
  /** Null where nothing is printed. */
  readonly text: string | null;
  /** Whether the word may mean something; any other fits everywhere and tells nothing. */
  readonly isRead: boolean;
  readonly isWrong: boolean;
  /** The same for two words that mean the same; empty where the word can't be read. */
  readonly meaning: string;
  /** Whether this place's word could stand at that one. */
  readonly fitsAt: (other: Place) => boolean;
}

/** The words of a module in the order of its pins. */
export function placesOf(view: ModuleView): readonly Place[] {
  const places = kept.get(view) ?? placesIn(view);
  kept.set(view, places);
  return places;
}

const kept = new WeakMap<ModuleView, readonly Place[]>();

function placesIn({ module, roles, words }: ModuleView): readonly Place[] {
  return roles.map((role, index): Place => {
    const pin = module.pins[index];
    const { text, meanings } = pin ? printedWord(pin, words) : { text: null, meanings: [] };
    return {
      module,
      pin: pin?.id ?? "",
      role,
      text,
      isRead: meanings.length > 0,
      isWrong: role.verdict === "contradicted",
      meaning: meanings
        .map((one) => `${one.role} ${one.side ?? ""}`)
        .sort()
        .join(),
      fitsAt: ({ role: { fits, circuitSide } }) =>
        meanings.length === 0 || meanings.some((one) => meaningFits(one, fits, circuitSide)),
    };
  });
}

/**
 * Words that stand one below the other, each to be moved to the place of another of them. `fits` is
 * asked of the word at one index and the place at another.
 */
export interface WordColumn {
  readonly texts: readonly string[];
  readonly wrong: readonly number[];
  readonly fits: (word: number, place: number) => boolean;
}

/** The places' words as one column; every one of them has a word. */
export function columnOf(places: readonly Place[]): WordColumn {
  const table = places.map((word) => places.map((place) => word.fitsAt(place)));
  return {
    texts: places.map(({ text }) => text ?? ""),
    wrong: places.flatMap(({ isWrong }, index) => (isWrong ? [index] : [])),
    fits: (word, place) => table[word]?.[place] ?? false,
  };
}
