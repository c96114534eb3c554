import { DUTCH } from "./dutch.ts";
import { ENGLISH } from "./english.ts";
import { FRENCH } from "./french.ts";
import { GERMAN } from "./german.ts";
import { ITALIAN } from "./italian.ts";
import { JAPANESE } from "./japanese.ts";
import type { Meaning } from "./meaning.ts";
import { POLISH } from "./polish.ts";
import { PORTUGUESE } from "./portuguese.ts";
import { SPANISH } from "./spanish.ts";
import { SWEDISH } from "./swedish.ts";
import { TURKISH } from "./turkish.ts";

/** How one language writes the words of its table. */
export interface Language {
  readonly name: string;
  readonly words: Readonly<Record<string, readonly Meaning[]>>;
  /** Endings that make a word of the table plural; others stand in the table themselves. */
  readonly plurals: readonly string[];
  /** What may stand between the parts of a word written as one; null where words stand apart. */
  readonly joints: readonly string[] | null;
  /** Letters of a word from which on it may be a part of a longer one. */
  readonly shortestPart: number;
  /** Ä is also written AE, and so on. */
  readonly spellsOut: boolean;
}

const language = (
  name: string,
  words: Language["words"],
  plurals: readonly string[],
  more: Partial<Language> = {},
): Language => ({
  name,
  words,
  plurals,
  joints: null,
  shortestPart: 4,
  spellsOut: false,
  ...more,
});

/** English first: where nothing a word may mean fits the circuit, its first meaning is named. */
export const LANGUAGES: readonly Language[] = [
  language("English", ENGLISH, ["S"]),
  language("German", GERMAN, ["N", "EN", "E"], {
    joints: ["", "S", "N", "EN", "E"],
    spellsOut: true,
  }),
  language("French", FRENCH, ["S"]),
  language("Spanish", SPANISH, ["S", "ES"]),
  language("Italian", ITALIAN, []),
  language("Portuguese", PORTUGUESE, ["S", "ES"]),
  language("Dutch", DUTCH, ["EN", "S"], { joints: ["", "S", "EN", "E"] }),
  language("Swedish", SWEDISH, ["AR", "ER", "R"], { joints: ["", "S"], spellsOut: true }),
  language("Polish", POLISH, []),
  language("Turkish", TURKISH, ["LAR", "LER"]),
  language("Japanese", JAPANESE, [], { joints: [""], shortestPart: 1 }),
];
