import type { Random } from "../../../../src/base/index.ts";
import type { PartOf } from "../../../../src/job/index.ts";
import type { TruePin } from "../paper-job.ts";
import { mayStand, WORDS, type Word, wordOf } from "../words.ts";
import { type Disagreement, type Expected, someModule } from "./disagreement.ts";

/** Words in the order of the pins, null where nothing is printed. */
export type Printed = readonly (string | null)[];

/** A list of words in another order. */
type Shuffle = (random: Random, words: Printed) => Printed;

const exchanged: Shuffle = (random, words) => {
  const [one, other] = [random.below(words.length), random.below(words.length)];
  return words.with(one, words[other] ?? null).with(other, words[one] ?? null);
};

const rotated: Shuffle = (random, words) => {
  const by = 1 + random.below(Math.max(1, words.length - 1));
  return words.map((_, index) => words[(index + by) % words.length] ?? null);
};

/** A column of words set one line too low: the last falls off the end. */
const shifted: Shuffle = (_, words) => [null, ...words.slice(0, -1)];

/** Read in two columns, each line turned left for right. */
const mirrored: Shuffle = (_, words) => words.map((_, index) => words[index ^ 1] ?? null);

const wrong: Shuffle = (random, words) => {
  const at = random.below(words.length);
  return words.with(at, random.pick(WORDS).text);
};

const shuffling = (name: string, shuffle: Shuffle): Disagreement => ({
  name,
  forgetsReadings: true,
  inject(random, paper) {
    const { module, pins } = someModule(random, paper);
    const before = textsOf(module);
    if (before.filter((word) => word !== null).length < 3) return null;
    const after = shuffle(random, before);
    printWords(module, after);
    const expected = [...wordFindings(module.id, pins, after), ...untiedFindings(pins, after)];
    // two grounds exchanged, or a word that is as right as the one before: nothing to be seen
    return expected.length === 0 ? null : expected;
  },
});

export const textsOf = ({ pins }: PartOf<"module">): Printed =>
  pins.map(({ printed }) => printed ?? null);

export function printWords(module: PartOf<"module">, words: Printed): void {
  module.pins = module.pins.map(({ printed: _, ...pin }, index) => {
    const printed = words[index];
    return printed == null ? pin : { ...pin, printed };
  });
}

/** Pins that are tied to nothing, since nothing comes to them, and now say that they are for something. */
export const untiedFindings = (pins: readonly TruePin[], words: Printed): Expected =>
  pins.flatMap(({ pin, cavity }, index) => {
    const word = wordOf(words[index] ?? undefined);
    const isFor = word !== null && !word.roles.includes("unused");
    return cavity === null && isFor ? [`pin-without-cavity ${pin}`] : [];
  });

/** What must be found of a module's words, by the page: wrong ones, and whether they are only misplaced. */
export function wordFindings(module: string, pins: readonly TruePin[], words: Printed): Expected {
  const placed = pins.flatMap((pin, index) => {
    const word = wordOf(words[index] ?? undefined);
    return word ? [{ pin, word }] : [];
  });
  const contradicted = placed.filter(({ pin, word }) => !mayStand(word, pin));
  if (contradicted.length === 0) return [];
  const isRearranged = canAllStand(
    placed.map(({ word }) => word),
    placed.map(({ pin }) => pin),
  );
  const isMisplaced = isRearranged || (contradicted.length > 1 && isListOffByOne(pins, words));
  return [
    ...contradicted.map(({ pin }) => `printed-role-contradicted ${pin.pin}`),
    ...(isMisplaced ? [`printed-roles-rearranged ${module}`] : []),
  ];
}

/** Whether each word can have a pin of its own at which it is right (augmenting paths). */
function canAllStand(words: readonly Word[], pins: readonly TruePin[]): boolean {
  const wordAt = new Map<TruePin, Word>();
  const place = (word: Word, tried: Set<TruePin>): boolean =>
    pins.some((pin) => {
      if (tried.has(pin) || !mayStand(word, pin)) return false;
      tried.add(pin);
      const there = wordAt.get(pin);
      if (there !== undefined && !place(there, tried)) return false;
      wordAt.set(pin, word);
      return true;
    });
  // the same word twice is two words
  return words.every((word) => place({ ...word }, new Set()));
}

/** Whether the whole list of three words or more, one line higher or else one lower, is right. */
function isListOffByOne(pins: readonly TruePin[], words: Printed): boolean {
  const isRightFrom = (by: number) =>
    words.every((text, index) => {
      const word = wordOf(text ?? undefined);
      const pin = pins[index + by];
      return word === null || (pin !== undefined && mayStand(word, pin));
    });
  const printed = words.filter((text) => text !== null);
  return printed.length > 2 && isRightFrom(-1) !== isRightFrom(1);
}

export const PRINTED_WORDS: readonly Disagreement[] = [
  shuffling("words exchanged", exchanged),
  shuffling("words rotated", rotated),
  shuffling("words shifted by one", shifted),
  shuffling("words mirrored", mirrored),
  shuffling("a wrong word", wrong),
];
