import { partsInside } from "./compound.ts";
import { LANGUAGES } from "./languages.ts";
import { withoutMarks } from "./letters.ts";
import type { Meaning } from "./meaning.ts";
import { allOf, narrow } from "./narrow.ts";
import { type Entry, type WordIndex, wordIndex } from "./word-index.ts";

const LONGEST_PHRASE = 4;
const ENGLISH = 0;

/** What one language makes of the tokens. */
class Reading {
  /** Everything before this token has been read. */
  next = 0;
  private readonly found: { readonly entry: Entry; readonly words: number }[] = [];

  take(entry: Entry, next: number, words: number): void {
    this.next = next;
    this.found.push({ entry, words });
  }

  /** What counts of it: short words only beside one that tells the language. */
  private sure() {
    const isTold = this.found.some(({ entry }) => entry.tells === "language");
    return this.found.filter(({ entry }) => isTold || entry.tells !== "short");
  }

  /** Pieces that it reads the words in: the fewer, the better it knows them together. */
  get pieces(): number {
    return this.sure().length;
  }

  /** Words that it knows. */
  get known(): number {
    return this.sure().reduce((sum, { words }) => sum + words, 0);
  }

  meanings(): readonly Meaning[] {
    const groups = this.sure().map(({ entry }) => entry.meanings);
    return narrow(groups.filter((group) => group.length > 0));
  }
}

/**
 * What the tokens of a printed word may mean, in each language the longest known phrase first. Only
 * the languages that know most of its words count, and know them best together; of several the word
 * keeps what it means in each. English counts beside them unless another one knows every word and
 * English doesn't. Where all are English and say nothing of a role, nobody is asked any further:
 * `CONTACT` and `SUMMER` need not be the French and the German word.
 */
export function meaningsIn(tokens: readonly string[]): readonly Meaning[] {
  const readings = readIn(tokens);
  const words = wordsAmong(tokens);
  const most = Math.max(...readings.map(({ known }) => known));
  const best = readings.filter(({ known, pieces }) => known === most && pieces > 0);
  const fewest = Math.min(...best.map(({ pieces }) => pieces));
  const counts = readings.filter((reading, language) =>
    language === ENGLISH
      ? reading.known === most || most < words
      : reading.known === most && reading.pieces === fewest,
  );
  const meanings = counts.map((reading) => reading.meanings());
  const isPlainEnglish = words > 0 && readings[ENGLISH]?.known === words;
  return isPlainEnglish && meanings[ENGLISH]?.length === 0 ? [] : allOf(meanings);
}

function readIn(tokens: readonly string[]): readonly Reading[] {
  const index = wordIndex();
  const readings = LANGUAGES.map(() => new Reading());
  const plain = tokens.map(withoutMarks);
  for (let at = 0; at < tokens.length; at++) {
    for (let length = Math.min(LONGEST_PHRASE, tokens.length - at); length >= 1; length--) {
      const end = at + length;
      const words = wordsAmong(tokens.slice(at, end));
      const exactForm = tokens.slice(at, end).join(" ");
      for (const form of new Set([exactForm, plain.slice(at, end).join(" ")])) {
        for (const entry of index.entries.get(form) ?? []) {
          const reading = readings[entry.language];
          if (reading && reading.next <= at && isWritten(entry, form === exactForm)) {
            reading.take(entry, end, words);
          }
        }
      }
    }
    for (const [language, reading] of readings.entries()) {
      const token = plain[at];
      if (token === undefined || reading.next > at) continue;
      const withSign = language === ENGLISH ? null : signed(index, token, language);
      // A word that is known with its sign is known better.
      if (withSign) reading.take(withSign, at + 1, 0);
      else {
        const made = compound(index, token, language);
        if (made) reading.take(made, at + 1, 1);
      }
    }
  }
  return readings;
}

/** An English word has no marks to leave out: `RÉSERVE` is none. */
const isWritten = ({ language }: Entry, isExact: boolean) => isExact || language !== ENGLISH;

/** Numbers and lone letters belong to no language. */
const wordsAmong = (tokens: readonly string[]): number =>
  tokens.filter((token) => !/^(?:\d+\p{L}?|\p{sc=Latin})$/u.test(token)).length;

/** A known word with a sign of its own, e.g. `POMPE+`: it may as well be a feed, or a ground. */
function signed({ entries }: WordIndex, token: string, language: number): Entry | null {
  const sign = /[+-]$/.exec(token)?.[0];
  if (!sign) return null;
  const bare = entries.get(token.slice(0, -1))?.find((one) => one.language === language);
  if (!bare || bare.meanings.length === 0) return null;
  const rail: Meaning = { role: sign === "+" ? "supply" : "ground", side: null };
  return { ...bare, meanings: allOf([bare.meanings, [rail]]) };
}

function compound({ parts }: WordIndex, token: string, language: number): Entry | null {
  const known = parts[language];
  const joints = LANGUAGES[language]?.joints;
  const inside = known && joints ? partsInside(token, known, joints) : null;
  if (!inside) return null;
  const meanings = narrow(inside.filter((one) => one.length > 0));
  return { language, meanings, tells: "language" };
}
