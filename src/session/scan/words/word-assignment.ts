import type { Job } from "../../../job/index.ts";
import type { ReadWord } from "./read-word.ts";
import { isBeside, isNextLine } from "./word-captions.ts";
import { type Claim, claimsOf, labelClaims, valueClaims } from "./word-claims.ts";
import { type Meaning, meaningsOf } from "./word-meaning.ts";
import { isInSymbol, type WordPlaces } from "./word-places.ts";
import { partWrites } from "./word-writes.ts";

/** A word with what it most likely belongs to. */
export interface AssignedWord {
  readonly word: ReadWord;
  /** The first is the likeliest; empty where nothing of the drawing fits. */
  readonly claims: readonly Claim[];
}

/**
 * What every word of a sheet belongs to: the nearest first, each name, print and printed word once; then
 * what stands under or beside a name, as values and labels do.
 */
export function assignWords(
  job: Job,
  places: WordPlaces,
  words: readonly ReadWord[],
): readonly AssignedWord[] {
  const read = words.map((word) => ({ word, meanings: meaningsOf(word.text) }));
  const taken = new Map<string, ReadWord>();
  const given = new Map<ReadWord, Claim>();
  const all = new Map<ReadWord, readonly Claim[]>();
  const give = (claims: readonly Claim[]) => {
    for (const claim of [...claims].sort((a, b) => a.cost - b.cost)) {
      if (given.has(claim.word) || taken.has(claim.slot)) continue;
      given.set(claim.word, claim);
      taken.set(claim.slot, claim.word);
    }
  };
  const claim = (of: typeof claimsOf, left: typeof read) => {
    const found = left.map(({ word, meanings }) => [word, of(places, word, meanings)] as const);
    for (const [word, claims] of found) all.set(word, claims);
    give(found.flatMap(([, claims]) => claims));
  };
  const left = () => read.filter(({ word }) => !given.has(word));
  claim(claimsOf, read);
  inCaptions(job, places, left, given);
  claim(valueClaims, left());
  claim(labelClaims, left());
  return words.map((word) => ({ word, claims: inOrder(word, given, all.get(word) ?? [], taken) }));
}

/** The one that was given, then the others that no other word has taken. */
function inOrder(
  word: ReadWord,
  given: ReadonlyMap<ReadWord, Claim>,
  all: readonly Claim[],
  taken: ReadonlyMap<string, ReadWord>,
): Claim[] {
  const own = given.get(word);
  const others = all.filter((one) => one !== own && (taken.get(one.slot) ?? word) === word);
  const sorted = [...others].sort((a, b) => a.cost - b.cost);
  return own ? [own, ...sorted] : sorted;
}

interface Read {
  readonly word: ReadWord;
  readonly meanings: readonly Meaning[];
}

/** From each part's name on, line after line and word after word: values and labels of the same part. */
function inCaptions(
  job: Job,
  places: WordPlaces,
  left: () => readonly Read[],
  given: Map<ReadWord, Claim>,
): void {
  const parts = new Map(job.diagram.parts.map((part) => [part.id, part]));
  const heads = [...given.values()].filter(
    ({ slot, meaning }) => slot.startsWith("name ") && meaning.is === "name",
  );
  for (let round = heads; round.length > 0; ) {
    const next: Claim[] = [];
    for (const head of round) {
      const part = parts.get(head.ref);
      if (!part) continue;
      for (const { word, meanings } of left()) {
        if (!isNextLine(head.word, word) && !isBeside(head.word, word)) continue;
        if (isInSymbol(places, word)) continue;
        const meaning = captionMeaning(meanings);
        if (!meaning) continue;
        const slot = `${meaning.is === "amounts" ? "value" : "label"} ${part.id}`;
        const claim = {
          word,
          meaning,
          ref: part.id,
          slot,
          cost: head.cost,
          writes: partWrites(part, meaning),
        };
        given.set(word, claim);
        next.push(claim);
      }
    }
    round = next;
  }
}

const captionMeaning = (meanings: readonly Meaning[]): Meaning | null =>
  meanings.find(({ is }) => is === "amounts") ?? meanings.find(({ is }) => is === "words") ?? null;
