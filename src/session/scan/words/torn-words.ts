import { addTo } from "../../../base/index.ts";
import type { ReadDoubt, ReadWord } from "./read-word.ts";

/** In heights of the letters: words of one label stand so near to one another, and so much in line and of one size. */
const GAP = 1.3;
const ASIDE = 0.3;
const ALIKE = 0.75;
/** Behind letters that were spoilt whole ones may be missing. */
const WIDE_GAP = 2;

/** What a line does to the letters it touches, and what spoils them. */
const SPOILT: readonly ReadDoubt[] = ["crowded", "faint", "misfit"];
const TOUCHED: readonly ReadDoubt[] = ["cut", ...SPOILT];

/** What stands on the sheet as a word does, read or not. */
export type Standing = Pick<ReadWord, "box" | "turn">;

/** So long, in heights, what could not be read has several letters, and is no piece of a symbol. */
const SEVERAL = 1.5;

/**
 * Words that are likely a piece of a longer label: what stands next to them in line has suffered from a line or a
 * stain, which may have parted the two, or could not be read. Each reads well by itself, as `8 BK` does of `31-8 BK`.
 */
export function tornWords(
  words: readonly ReadWord[],
  unread: readonly Standing[],
): ReadonlySet<ReadWord> {
  const lost = unread.map(alongLonger).filter(isSeveral);
  const spoilt = new Set<Standing>(lost);
  const touched = new Set<Standing>(spoilt);
  for (const word of words) {
    if (word.doubts.some((doubt) => SPOILT.includes(doubt))) spoilt.add(word);
    if (word.doubts.some((doubt) => TOUCHED.includes(doubt))) touched.add(word);
  }
  const beside = besideEach(words, [...words, ...lost]);
  const found = new Set<ReadWord>();
  const next: Standing[] = [...touched];
  for (let one = next.pop(); one; one = next.pop()) {
    for (const { word, gap } of beside.get(one) ?? []) {
      if (touched.has(word) || found.has(word)) continue;
      if (gap > (spoilt.has(one) ? WIDE_GAP : GAP)) continue;
      found.add(word);
      next.push(word);
    }
  }
  return found;
}

/** Of what could not be read it is not known which way it goes. */
const alongLonger = ({ box }: Standing): Standing => ({
  box,
  turn: box.right - box.left >= box.bottom - box.top ? 0 : 270,
});

const isSeveral = (one: Standing): boolean => {
  const { from, to, tall } = alongIn(one, one.turn === 0);
  return to - from > SEVERAL * tall;
};

interface Beside {
  readonly word: ReadWord;
  /** In heights of the letters. */
  readonly gap: number;
}

/** Of all that stands on the sheet the words next to each in line. */
function besideEach(
  words: readonly ReadWord[],
  all: readonly Standing[],
): ReadonlyMap<Standing, readonly Beside[]> {
  const found = new Map<Standing, Beside[]>();
  const isWord = new Map<Standing, ReadWord>(words.map((word) => [word, word]));
  const add = (one: Standing, other: Standing, gap: number) => {
    const word = isWord.get(other);
    if (word) addTo(found, one, { word, gap });
  };
  for (const isLevel of [true, false]) {
    const sorted = all
      .filter(({ turn }) => (turn === 0) === isLevel)
      .map((standing) => ({ standing, ...alongIn(standing, isLevel) }))
      .sort((a, b) => a.from - b.from);
    const tallest = sorted.reduce((most, { tall }) => Math.max(most, tall), 0);
    for (const [n, one] of sorted.entries()) {
      for (let m = n + 1; m < sorted.length; m++) {
        const other = sorted[m] as (typeof sorted)[number];
        if (other.from > one.to + WIDE_GAP * tallest) break;
        const [less, more] = [Math.min(one.tall, other.tall), Math.max(one.tall, other.tall)];
        const gap = (other.from - one.to) / more;
        if (gap > WIDE_GAP || less < ALIKE * more) continue;
        if (Math.abs(one.middle - other.middle) > ASIDE * more) continue;
        add(one.standing, other.standing, gap);
        add(other.standing, one.standing, gap);
      }
    }
  }
  return found;
}

/** By its box: of letters that a line halved, the height is half. */
const alongIn = ({ box: { left, right, top, bottom } }: Standing, isLevel: boolean) =>
  isLevel
    ? { from: left, to: right, middle: (top + bottom) / 2, tall: bottom - top }
    : { from: top, to: bottom, middle: (left + right) / 2, tall: right - left };
