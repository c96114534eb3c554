import { DIN_72552_ROLES } from "./din-72552.ts";
import { INTERNATIONAL } from "./international.ts";
import { LANGUAGES, type Language } from "./languages.ts";
import { spelledOut, upperCase, withoutMarks } from "./letters.ts";
import type { Meaning } from "./meaning.ts";

/** A word or phrase as one language knows it. */
export interface Entry {
  /** Its place in `LANGUAGES`. */
  readonly language: number;
  readonly meanings: readonly Meaning[];
  /**
   * What its being known tells of the language: a short word tells nothing and counts only beside a
   * longer one of its own language (`WY` may as well be a colour).
   */
  readonly tells: "language" | "nothing" | "short";
}

export interface WordIndex {
  /** By phrase: tokens parted by single spaces, upper case, with their marks or without. */
  readonly entries: ReadonlyMap<string, readonly Entry[]>;
  /** By language, where words are written as one: the words that may be part of another. */
  readonly parts: readonly (ReadonlyMap<string, readonly Meaning[]> | null)[];
}

/** Words up to this many letters say too little when their marks are left out (`BOŞ`, `AKÜ`). */
const NEEDS_ITS_MARKS = 3;
const SHORT = /^\p{sc=Latin}{1,2}$/u;
/** Shorter words have no plural. */
const SHORTEST_SINGULAR = 3;

let built: WordIndex | null = null;

/** All tables in one, made when the first word is read. */
export function wordIndex(): WordIndex {
  built ??= build();
  return built;
}

function build(): WordIndex {
  const entries = new Map<string, Entry[]>();
  const forms = LANGUAGES.map(ownForms);
  const isSomeWord = (phrase: string) => forms.some((own) => own.has(phrase));
  const parts = LANGUAGES.map((language, at) => {
    const own = forms[at] ?? new Map<string, readonly Meaning[]>();
    const put = (phrase: string, meanings: readonly Meaning[], tells: Entry["tells"]) => {
      const list = entries.get(phrase);
      if (!list) entries.set(phrase, [{ language: at, meanings, tells }]);
      else if (list.at(-1)?.language !== at) list.push({ language: at, meanings, tells });
    };
    for (const [phrase, meanings] of own) {
      put(phrase, meanings, at > 0 && SHORT.test(phrase) ? "short" : "language");
    }
    const shared = { ...INTERNATIONAL, ...DIN_72552_ROLES };
    for (const [phrase, meanings] of Object.entries(shared)) put(phrase, meanings, "nothing");
    // "GNDS" is English.
    for (const [phrase, meanings] of [...own, ...(at === 0 ? Object.entries(shared) : [])]) {
      for (const plural of pluralsOf(phrase, language)) {
        // FREIN is a brake in French, and no plural of the German FREI.
        if (at === 0 || !isSomeWord(plural)) put(plural, meanings, "language");
      }
    }
    return language.joints === null ? null : partsOf(own, language);
  });
  return { entries, parts };
}

/** The words of a table in each way that they are written. */
function ownForms(language: Language): ReadonlyMap<string, readonly Meaning[]> {
  const forms = new Map<string, readonly Meaning[]>();
  const derived: [string, readonly Meaning[]][] = [];
  for (const [word, meanings] of Object.entries(language.words)) {
    const exact = upperCase(word);
    forms.set(exact, meanings);
    const plain = withoutMarks(exact);
    if (plain !== exact && plain.length > NEEDS_ITS_MARKS) derived.push([plain, meanings]);
    if (language.spellsOut) derived.push([spelledOut(exact), meanings]);
  }
  for (const [form, meanings] of derived) {
    const known = forms.get(form);
    forms.set(form, known ? [...new Set([...known, ...meanings])] : meanings);
  }
  return forms;
}

function pluralsOf(phrase: string, { plurals }: Language): readonly string[] {
  const last = phrase.slice(phrase.lastIndexOf(" ") + 1);
  const isWord = /^\p{sc=Latin}+$/u.test(last) && phrase.length >= SHORTEST_SINGULAR;
  return isWord ? plurals.map((ending) => phrase + ending) : [];
}

function partsOf(own: ReadonlyMap<string, readonly Meaning[]>, { shortestPart }: Language) {
  const fits = (word: string) => word.length >= shortestPart && /^\p{L}+$/u.test(word);
  return new Map([...own].filter(([word]) => fits(word)));
}
