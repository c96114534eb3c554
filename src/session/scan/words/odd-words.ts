import { type ReadDoubt, type ReadWord, SURE } from "./read-word.ts";
import { type Standing, tornWords } from "./torn-words.ts";
import { type Meaning, meaningsOf, type WirePrint } from "./word-meaning.ts";

/** So many numbers of one fashion are a habit of the sheet, and so many of one beginning a group of wires. */
const HABIT = 5;
const GROUP = 3;
/** Of all prints this share has what counts as usual. */
const USUAL = 0.75;

interface Print {
  readonly word: ReadWord;
  readonly print: WirePrint;
}

/**
 * The words of one sheet, with doubts where one makes no sense, or is unlike what the sheet's other wires
 * bear: where all others have a number and a colour, one without may have lost it; or where it is likely a piece of a
 * longer one. `unread`: what was cut out as a word and could not be read.
 */
export function withOddDoubts(
  words: readonly ReadWord[],
  unread: readonly Standing[] = [],
): readonly ReadWord[] {
  const senseless = words.filter(({ text }) => isSenseless(text));
  const unlike = unlikeOthers(words);
  const torn = tornWords(words, unread);
  return words.map((word) => {
    const more: ReadDoubt[] = senseless.includes(word)
      ? ["senseless"]
      : unlike.has(word)
        ? ["unlike"]
        : torn.has(word) && !word.doubts.includes("torn")
          ? ["torn"]
          : [];
    return more.length === 0
      ? word
      : { ...word, sure: Math.min(word.sure, SURE - 1), doubts: [...word.doubts, ...more] };
  });
}

/** Figures or a stroke, but neither a wire's print nor a name, a value or a mark as they are read. */
function isSenseless(text: string): boolean {
  if (!/[\d/]/.test(text)) return false;
  if (/^0\d+$/.test(text)) return true;
  const meanings = meaningsOf(text);
  return !meanings.some(({ is, mended }) => is !== "words" && !mended);
}

const wireIn = (meanings: readonly Meaning[]): WirePrint | null => {
  const [first] = meanings;
  return first?.is === "wire" && !first.mended ? first.print : null;
};

function unlikeOthers(words: readonly ReadWord[]): ReadonlySet<ReadWord> {
  const prints = words.flatMap((word): Print[] => {
    const print = wireIn(meaningsOf(word.text));
    // A bare number, or a size that stands by itself, may be anything.
    return print && (print.colour || /-/.test(print.number ?? "")) && !print.mm2
      ? [{ word, print }]
      : [];
  });
  const numbered = prints.filter(({ print }) => /-/.test(print.number ?? ""));
  const odd = new Set<ReadWord>();
  if (numbered.length < HABIT || numbered.length < USUAL * prints.length) return odd;
  for (const one of prints) if (!numbered.includes(one)) odd.add(one.word);
  const coloured = numbered.filter(({ print }) => print.colour !== undefined);
  if (coloured.length >= USUAL * numbered.length) {
    for (const one of numbered) if (!coloured.includes(one)) odd.add(one.word);
  }
  const beginnings = new Map<string, number>();
  const beginningOf = ({ number = "" }: WirePrint) => number.slice(0, number.indexOf("-"));
  for (const { print } of numbered) {
    const beginning = beginningOf(print);
    beginnings.set(beginning, (beginnings.get(beginning) ?? 0) + 1);
  }
  const isAlone = (beginning: string): boolean =>
    beginnings.get(beginning) === 1 &&
    [...beginnings].some(([other, count]) => count >= GROUP && isOneOff(beginning, other));
  for (const { word, print } of numbered) if (isAlone(beginningOf(print))) odd.add(word);
  return odd;
}

/** Figures that are taken for one another where some of their ink is lost. */
const ALIKE = ["38", "08", "68", "89", "56", "06", "17"];

/** Whether one figure lost or misread makes one of the other. */
function isOneOff(read: string, other: string): boolean {
  if (read.length === other.length) {
    const apart = [...read].flatMap((one, n) => (one === other[n] ? [] : [one + other[n]]));
    return (
      apart.length === 1 && ALIKE.some((pair) => [...pair].every((one) => apart[0]?.includes(one)))
    );
  }
  return (
    other.length === read.length + 1 &&
    [...other].some((_, n) => other.slice(0, n) + other.slice(n + 1) === read)
  );
}
