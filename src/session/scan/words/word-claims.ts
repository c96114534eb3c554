import type { Id, PinRef } from "../../../job/index.ts";
import type { PartShape } from "../../diagram/part-shape.ts";
import { isOddName, isOwnName } from "./name-letters.ts";
import type { ReadWord } from "./read-word.ts";
import { type Meaning, tidied } from "./word-meaning.ts";
import {
  hasOwnMarks,
  isInSymbol,
  nearJoints,
  nearParts,
  nearWires,
  pinsBeside,
  pinsInside,
  type WordPlaces,
} from "./word-places.ts";
import { amountWrites, partWrites, type WordWrite, wireWrites } from "./word-writes.ts";

/** One thing that one word may belong to. */
export interface Claim {
  readonly word: ReadWord;
  readonly meaning: Meaning;
  /** What is written to: a part, a wire, a pin. */
  readonly ref: Id | PinRef;
  /** What only one word of a sheet can be: the name of that part, the print of that wire. */
  readonly slot: string;
  /** Letter heights away, and what speaks against it; less is likelier. */
  readonly cost: number;
  readonly writes: readonly WordWrite[];
  /** Where it waits for a splice that is not drawn: nothing can be written. */
  readonly waits?: true;
}

/** A letter that is not the kind's own speaks against a name, and more so one that its names never bear; the same name for it. */
const OTHER_LETTER = 1;
const ODD_LETTER = 3;
const SAME_NAME = 1;
/** Beside a pin inside a module stand printed words; its own name and label stand clear of them. */
const AT_A_PIN = 2.5;
/** A value may stand so far from its part where no name leads to it. */
const VALUE_REACH = 3;

/** What the letters of a name cost it at a part. */
const letterCost = ({ part: { kind } }: PartShape, name: string): number =>
  isOwnName(kind, name) ? 0 : isOddName(kind, name) ? ODD_LETTER : OTHER_LETTER;

/** What speaks against any place: a doubtful reading, and letters that had to be put right. */
const DOUBTFUL = 2;
const MENDED = 1.5;

const doubtOf = ({ sure }: ReadWord, { mended }: Meaning): number =>
  DOUBTFUL * (1 - sure / 100) + (mended ? MENDED : 0);

/** Everything that a word may belong to by what it says and where it stands, values and labels left out. */
export function claimsOf(
  places: WordPlaces,
  word: ReadWord,
  meanings: readonly Meaning[],
): Claim[] {
  const printed = printedClaims(places, word, meanings);
  const found = [
    ...printed,
    ...meanings.flatMap((meaning): Claim[] => {
      if (meaning.is === "name")
        return [
          ...nameClaims(places, word, meaning, printed.length > 0),
          ...jointClaims(places, word, meaning),
        ];
      if (meaning.is === "wire") return wireClaims(places, word, meaning);
      return meaning.is === "mark" ? markClaims(places, word, meaning) : [];
    }),
  ];
  return found.map((claim) => ({ ...claim, cost: claim.cost + doubtOf(word, claim.meaning) }));
}

/** Whatever it says, a word inside a module beside one of its pins is that pin's printed word. */
function printedClaims(places: WordPlaces, word: ReadWord, meanings: readonly Meaning[]): Claim[] {
  const value = tidied(word.text);
  const mended = meanings.every((meaning) => meaning.mended);
  return pinsInside(places, word).map(({ thing, cost }) => ({
    word,
    meaning: { is: "words", text: value, mended },
    ref: thing,
    slot: `printed ${thing}`,
    cost,
    writes: [{ field: "printed", ref: thing, value }],
  }));
}

function nameClaims(
  places: WordPlaces,
  word: ReadWord,
  meaning: Extract<Meaning, { is: "name" }>,
  isAtPin: boolean,
): Claim[] {
  return nearParts(places, word).map(({ thing, cost }) => ({
    word,
    meaning,
    ref: thing.part.id,
    slot: `name ${thing.part.id}`,
    cost:
      cost +
      letterCost(thing, meaning.id) +
      (thing.part.id === meaning.id ? 0 : SAME_NAME) +
      (isAtPin ? AT_A_PIN : 0),
    writes: partWrites(thing.part, meaning),
  }));
}

/** A splice's name beside a joint where no splice is drawn is that of the splice to come. */
function jointClaims(
  places: WordPlaces,
  word: ReadWord,
  meaning: Extract<Meaning, { is: "name" }>,
): Claim[] {
  if (!isOwnName("splice", meaning.id)) return [];
  return nearJoints(places, word).map(({ thing, cost }) => {
    const place = thing.join(",");
    return {
      word,
      meaning,
      ref: place,
      slot: `joint ${place}`,
      cost,
      writes: [],
      waits: true,
    };
  });
}

function wireClaims(
  places: WordPlaces,
  word: ReadWord,
  meaning: Extract<Meaning, { is: "wire" }>,
): Claim[] {
  // A bare number may be anything: only right along a wire it is the wire's.
  const bare = Object.keys(meaning.print).length === 1 && /^\d+$/.test(meaning.print.number ?? "");
  return nearWires(places, word).map(({ thing, cost }) => ({
    word,
    meaning,
    ref: thing,
    slot: `print ${thing}`,
    cost: cost + (bare ? 1 : 0),
    writes: wireWrites(thing, meaning.print),
  }));
}

function markClaims(
  places: WordPlaces,
  word: ReadWord,
  meaning: Extract<Meaning, { is: "mark" }>,
): Claim[] {
  return pinsBeside(places, word).flatMap(({ thing: { part, pin, ref }, cost }): Claim[] => {
    const claim = { word, meaning, ref, slot: `mark ${ref}`, cost };
    if (hasOwnMarks(part)) {
      return [{ ...claim, writes: [{ field: "mark", ref, value: meaning.mark }] }];
    }
    // 87 beside a relay's 87 says nothing new, but it is no wire's number either.
    return pin.toLowerCase() === meaning.mark.toLowerCase() ? [{ ...claim, writes: [] }] : [];
  });
}

/** A value that no name leads to, beside parts that such a value can be set for. */
export function valueClaims(
  places: WordPlaces,
  word: ReadWord,
  meanings: readonly Meaning[],
): Claim[] {
  return meanings.flatMap((meaning) => {
    if (meaning.is !== "amounts") return [];
    return nearParts(places, word).flatMap(({ thing, cost }) => {
      const writes = amountWrites(thing.part, meaning.amounts);
      if (cost > VALUE_REACH || writes.length === 0) return [];
      const slot = `value ${thing.part.id}`;
      return [{ word, meaning, ref: thing.part.id, slot, cost, writes }];
    });
  });
}

/** Words inside a module that are neither its name nor a pin's say what it is. */
export function labelClaims(
  places: WordPlaces,
  word: ReadWord,
  meanings: readonly Meaning[],
): Claim[] {
  const meaning = meanings.find(({ is }) => is === "words");
  if (!meaning || isInSymbol(places, word)) return [];
  return nearParts(places, word).flatMap(({ thing, cost }) => {
    if (cost > 0 || thing.part.kind !== "module") return [];
    const writes = partWrites(thing.part, meaning);
    return [{ word, meaning, ref: thing.part.id, slot: `label ${thing.part.id}`, cost, writes }];
  });
}
