import { expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { wordLinesOf } from "../../../src/scan/words/word-lines.ts";

const SIDE = 8;
const APART = 40;

const piece = (left: number, top: number, wide: number, high: number, number: number) => {
  const box = { left, top, right: left + wide - 1, bottom: top + high - 1 };
  return { ...box, area: wide * high, numbers: [number] };
};

test("a page of halftone, with more pieces than a call takes arguments, has one row for each", () => {
  const letters = Array.from({ length: 130_000 }, (_, n) =>
    piece(APART * n, APART * n, SIDE, SIDE, n),
  );
  expect(finished(wordLinesOf({ letters, marks: [] }))).toHaveLength(letters.length);
});

test.each(["level", "upright"] as const)(
  "a %s row has the marks in and beside it, whatever others stand on the page",
  (way) => {
    const random = seededRandom(3);
    const isLevel = way === "level";
    // Three letters from 100 to 128 along the row and 100 to 108 across it.
    const letters = [0, 10, 20].map((on, n) =>
      isLevel ? piece(100 + on, 100, SIDE, SIDE, n) : piece(100, 100 + on, SIDE, SIDE, n),
    );
    const marks = Array.from({ length: 3000 }, (_, n) =>
      piece(random.below(230), random.below(230), 2, 2, 3 + n),
    );
    const [row, ...others] = finished(wordLinesOf({ letters, marks }));
    expect(others).toEqual([]);
    expect(row?.way).toBe(way);
    // Half a letter's height and a twentieth beside the row, three tenths across it, by the mark's middle.
    const isNear = (x: number, y: number) => x > 95.6 && x < 132.4 && y > 97.6 && y < 110.4;
    const near = marks.filter(({ left, top }) =>
      isLevel ? isNear(left + 1, top + 1) : isNear(top + 1, left + 1),
    );
    expect(near.length).toBeGreaterThan(10);
    const found = row?.glyphs.flatMap(({ numbers }) => numbers).toSorted((a, b) => a - b);
    expect(found).toEqual([...letters, ...near].flatMap(({ numbers }) => numbers));
  },
);

test("a fat hyphen belongs to its row, though it is as large as a small letter; no other bar does", () => {
  const tall = 20;
  const letters = [0, 14].map((on, n) => piece(100 + on, 100, 10, tall, n));
  const bar = (left: number, top: number, wide: number, high: number) =>
    finished(wordLinesOf({ letters: [...letters, piece(left, top, wide, high, 9)], marks: [] }))
      .find(({ glyphs }) => glyphs.some(({ left: at }) => at === 100))
      ?.glyphs.some(({ numbers }) => numbers.includes(9));
  expect(bar(88, 107, 9, 6)).toBe(true);
  expect(bar(128, 107, 9, 6)).toBe(true);
  expect(bar(76, 107, 9, 6)).toBe(false);
  expect(bar(80, 107, 18, 6)).toBe(false);
  expect(bar(128, 105, 12, 9)).toBe(false);
});
