import { addTo, countLeading, Groups } from "../../base/index.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { withPieces } from "./broken-letters.ts";
import type { Glyph, Glyphs } from "./glyphs.ts";
import { type Extent, neighbours, type Placed } from "./neighbours.ts";
import type { WordTurn } from "./word-crop.ts";

/** Letters that stand in one row, in no order. */
export interface WordLine {
  readonly way: "level" | "upright";
  readonly glyphs: readonly Glyph[];
}

type Way = WordLine["way"];

/** All in shares of the letters' height. Letters of a word stand nearer than words, and words nearer than rows. */
const LETTER_GAP = 0.42;
const WORD_GAP = 1.1;
/** Letters of a word differ as x and X do; words of a row are set in one size. */
const LETTER_LIKE = 0.55;
const WORD_LIKE = 0.8;
const IN_ROW = 0.22;

const extentOf = ({ left, right, top, bottom }: Glyph, way: Way): Extent =>
  way === "level"
    ? { from: left, to: right + 1, low: top, high: bottom + 1 }
    : { from: top, to: bottom + 1, low: left, high: right + 1 };

const tallOf = ({ low, high }: Extent) => high - low;

/** The largest of a size, 0 for none: halftone has more pieces than a call takes arguments. */
const most = <T>(list: readonly T[], sizeOf: (one: T) => number): number =>
  list.reduce((largest, one) => Math.max(largest, sizeOf(one)), 0);

function around(extents: readonly Extent[]): Extent {
  let [from, to, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const one of extents) {
    [from, to] = [Math.min(from, one.from), Math.max(to, one.to)];
    [low, high] = [Math.min(low, one.low), Math.max(high, one.high)];
  }
  return { from, to, low, high };
}

/** Groups letters into rows, level and upright ones; a letter alone is a level row. */
export function* wordLinesOf({ letters, marks }: Glyphs): Sliced<readonly WordLine[]> {
  const taken = new Set<Glyph>();
  const words: WordLine[] = [];
  const level = yield* asPart(touching(letters, "level"), 0, 0.2);
  const upright = yield* asPart(touching(letters, "upright"), 0.2, 0.4);
  const tried = [
    ...level.map((glyphs) => ({ way: "level" as const, glyphs })),
    ...upright.map((glyphs) => ({ way: "upright" as const, glyphs })),
  ]
    .filter(({ glyphs }) => glyphs.length > 1)
    .sort((a, b) => b.glyphs.length - a.glyphs.length || gapOf(a) - gapOf(b));
  for (const { way, glyphs } of tried) {
    const left = glyphs.filter((glyph) => !taken.has(glyph));
    if (left.length < 2) continue;
    for (const glyph of left) taken.add(glyph);
    words.push({ way, glyphs: left });
  }
  const alone = letters.filter((glyph) => !taken.has(glyph)).map((glyph) => [glyph]);
  const fromLeft = marks.toSorted((a, b) => middleOf(a) - middleOf(b));
  // Of a page of halftone hardly any are left.
  const bars = alone.flat().filter(isLong);
  bars.sort((a, b) => middleOf(a) - middleOf(b));
  const rows = withPieces(yield* asPart(inRows(words, alone), 0.4, 0.8));
  const lines: WordLine[] = [];
  for (const [n, row] of rows.entries()) {
    if (n % ROWS === ROWS - 1) yield 0.8 + (0.2 * n) / rows.length;
    const lists = row.glyphs.length > 1 ? [fromLeft, bars] : [];
    const hyphens = lists.flatMap((list) =>
      marksBeside(row, list, HYPHEN_ASIDE).filter(isHyphenOf(row)),
    );
    const found = new Set([...marksBeside(row, fromLeft, MARK_ASIDE), ...hyphens]);
    lines.push({ ...row, glyphs: [...row.glyphs, ...found] });
  }
  return lines;
}

/** Rows whose marks are looked for in a slice. */
const ROWS = 200;

/** How far apart the letters of a row stand on the whole, in their heights. */
function gapOf({ way, glyphs }: WordLine): number {
  const extents = glyphs.map((glyph) => extentOf(glyph, way));
  const whole = around(extents);
  const filled = extents.reduce((sum, { from, to }) => sum + to - from, 0);
  return (whole.to - whole.from - filled) / tallOf(whole);
}

/** Letters that stand as close as those of one word. */
function* touching(letters: readonly Glyph[], way: Way): Sliced<Glyph[][]> {
  const sorted = letters
    .map((glyph) => ({ glyph, at: extentOf(glyph, way) }))
    .sort((a, b) => a.at.from - b.at.from);
  const groups = new Groups(sorted.length);
  const widest = most(sorted, ({ at }) => at.to - at.from);
  const tallest = most(sorted, ({ at }) => tallOf(at));
  yield* neighbours(sorted, Math.min(widest, LETTER_GAP * tallest), tallest, (n, m) => {
    const [one, other] = [sorted[n] as Placed, sorted[m] as Placed];
    if (isOneWord(one.at, other.at)) groups.join(n, m);
  });
  return membersOf(groups, sorted.length).map((members) =>
    members.map((n) => (sorted[n] as { glyph: Glyph }).glyph),
  );
}

function isOneWord(a: Extent, b: Extent): boolean {
  const [less, more] = [Math.min(tallOf(a), tallOf(b)), Math.max(tallOf(a), tallOf(b))];
  if (less < LETTER_LIKE * more) return false;
  const shared = Math.min(a.high, b.high) - Math.max(a.low, b.low);
  if (shared < 0.7 * less) return false;
  const gap = b.from - a.to;
  return gap <= LETTER_GAP * more && gap > -0.4 * Math.min(a.to - a.from, b.to - b.from);
}

interface Row {
  /** Null for a single letter, which may stand in either. */
  readonly way: Way | null;
  readonly glyphs: readonly Glyph[];
}

/** Words and single letters that follow one another in one row and one size, the nearest joined first. */
function* inRows(
  words: readonly WordLine[],
  alone: readonly (readonly Glyph[])[],
): Sliced<WordLine[]> {
  const rows: Row[] = [...words, ...alone.map((glyphs) => ({ way: null, glyphs }))];
  const level = yield* asPart(pairsOf(rows, "level"), 0, 0.5);
  const pairs = level.concat(yield* asPart(pairsOf(rows, "upright"), 0.5, 1));
  pairs.sort((a, b) => a.gap - b.gap);
  const groups = new Groups(rows.length);
  const ways = rows.map(({ way }) => way);
  for (const { one, other, way } of pairs) {
    const [a, b] = [groups.of(one), groups.of(other)];
    if (a === b || (ways[a] ?? way) !== way || (ways[b] ?? way) !== way) continue;
    groups.join(one, other);
    ways[groups.of(one)] = way;
  }
  return membersOf(groups, rows.length).map((members) => ({
    way: ways[groups.of(members[0] as number)] ?? "level",
    glyphs: members.flatMap((n) => (rows[n] as Row).glyphs),
  }));
}

interface Pair {
  readonly one: number;
  readonly other: number;
  readonly way: Way;
  readonly gap: number;
}

function* pairsOf(rows: readonly Row[], way: Way): Sliced<Pair[]> {
  const sorted = rows
    .map((row, number) => ({
      number,
      isAlone: row.way === null,
      at: rowExtent(row.glyphs.map((glyph) => extentOf(glyph, way))),
      way: row.way,
    }))
    .filter((row) => row.way === null || row.way === way)
    .sort((a, b) => a.at.from - b.at.from);
  const tallest = most(sorted, ({ at }) => tallOf(at));
  const pairs: Pair[] = [];
  yield* neighbours(sorted, WORD_GAP * tallest, IN_ROW * tallest, (n, m) => {
    const [one, other] = [sorted[n], sorted[m]];
    if (!one || !other) return;
    if (one.isAlone && other.isAlone && !(mayRead(one.at) && mayRead(other.at))) return;
    const gap = wordGap(one.at, other.at);
    if (gap !== null) pairs.push({ one: one.number, other: other.number, way, gap });
  });
  return pairs;
}

/**
 * Around all its letters along the row; across it where tall letters begin and most end, whatever slashes
 * and tails stick out.
 */
function rowExtent(extents: readonly Extent[]): Extent {
  const at = (share: number, list: number[]) =>
    list.sort((a, b) => a - b)[Math.floor(share * (list.length - 1))] as number;
  return {
    ...around(extents),
    low: at(
      0.25,
      extents.map(({ low }) => low),
    ),
    high: at(
      0.75,
      extents.map(({ high }) => high),
    ),
  };
}

/** Two letters alone only make a row in the way in which they are taller than wide. */
const mayRead = (at: Extent) => tallOf(at) >= at.to - at.from;

/** The gap in letter heights between what may be two words of one row; null when they are not. */
function wordGap(a: Extent, b: Extent): number | null {
  const [less, more] = [tallOf(a), tallOf(b)].sort((x, y) => x - y) as [number, number];
  if (less < WORD_LIKE * more) return null;
  if (Math.abs(a.low + a.high - b.low - b.high) / 2 > IN_ROW * more) return null;
  const gap = (b.from - a.to) / more;
  return gap <= WORD_GAP && gap > -0.3 ? gap : null;
}

/** How far beside a row and across it its small marks stand, in letter heights; a hyphen of wide-set letters farther. */
const MARK_ASIDE = 0.55;
const HYPHEN_ASIDE = 0.7;
const MARK_ACROSS = 0.3;
/** Anything shorter or thinner is dust, in letter heights. */
const LEAST_MARK = [0.12, 0.05] as const;

/** A fat hyphen of large letters is as large as a small letter, but so flat and so long. */
const HYPHEN = { flat: 0.34, long: [0.2, 0.6] } as const;
const LONG = 1.3;

/** Twice the x of a letter's middle: in whole numbers. */
const middleOf = ({ left, right }: Glyph) => left + right + 1;

const isLong = ({ left, right, top, bottom }: Glyph): boolean => {
  const [wide, high] = [right - left + 1, bottom - top + 1];
  return Math.max(wide, high) > LONG * Math.min(wide, high);
};

const isHyphenOf = ({ way, glyphs }: WordLine) => {
  const tall = tallOf(around(glyphs.map((glyph) => extentOf(glyph, way))));
  const [least, most] = HYPHEN.long;
  return (bar: Glyph): boolean => {
    const { from, to, low, high } = extentOf(bar, way);
    const [long, thick] = [(to - from) / tall, (high - low) / tall];
    return thick <= HYPHEN.flat && long > LONG * thick && long >= least && long <= most;
  };
};

/** The small marks of a row; `marks` stand from left to right, and only those near it are looked at. */
function marksBeside(
  { way, glyphs }: WordLine,
  marks: readonly Glyph[],
  beside: number,
): readonly Glyph[] {
  const at = around(glyphs.map((glyph) => extentOf(glyph, way)));
  const tall = tallOf(at);
  const own = new Set(glyphs);
  const [left, right] =
    way === "level"
      ? [at.from - beside * tall, at.to + beside * tall]
      : [at.low - MARK_ACROSS * tall, at.high + MARK_ACROSS * tall];
  const countLeftOf = (x: number) => countLeading(marks, (mark) => middleOf(mark) < 2 * x);
  const near = marks.slice(countLeftOf(left), countLeftOf(right));
  return near.filter((mark) => {
    if (own.has(mark)) return false;
    const { from, to, low, high } = extentOf(mark, way);
    const [middle, across] = [(from + to) / 2, (low + high) / 2];
    return (
      Math.max(to - from, high - low) >= LEAST_MARK[0] * tall &&
      Math.min(to - from, high - low) >= LEAST_MARK[1] * tall &&
      middle > at.from - beside * tall &&
      middle < at.to + beside * tall &&
      across > at.low - MARK_ACROSS * tall &&
      across < at.high + MARK_ACROSS * tall
    );
  });
}

/** Upright words of a drawing are read from the bottom up (ISO 129-1); the other way only where that fails. */
export const USUAL_TURN: Readonly<Record<Way, WordTurn>> = { level: 0, upright: 270 };

/** The members of every group, by number. */
function membersOf(groups: Groups, count: number): number[][] {
  const found = new Map<number, number[]>();
  for (let n = 0; n < count; n++) addTo(found, groups.of(n), n);
  return [...found.values()];
}
