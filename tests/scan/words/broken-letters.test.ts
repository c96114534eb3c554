import { expect, test } from "vitest";
import { withPieces } from "../../../src/scan/words/broken-letters.ts";
import type { Glyph } from "../../../src/scan/words/glyphs.ts";
import type { WordLine } from "../../../src/scan/words/word-lines.ts";

let number = 0;
const glyph = (left: number, top: number, right: number, bottom: number): Glyph => ({
  left,
  top,
  right,
  bottom,
  area: 50,
  numbers: [number++],
});
const level = (...glyphs: Glyph[]): WordLine => ({ way: "level", glyphs });

/** Three letters 20 pixels tall, with a gap for a fourth before the last. */
const word = level(glyph(10, 40, 19, 59), glyph(24, 40, 33, 59), glyph(52, 40, 61, 59));

test("pieces of a broken letter that lie within a row are that row's", () => {
  const upper = glyph(38, 39, 47, 47);
  const lower = glyph(38, 52, 47, 60);
  expect(withPieces([level(upper), word, level(lower)])).toEqual([
    level(...word.glyphs, upper, lower),
  ]);
});

test("what sticks out of a row, is as tall as its letters or has as many is a row of its own", () => {
  const below = level(glyph(38, 52, 47, 66));
  const asTall = level(glyph(38, 40, 47, 59));
  const asMany = level(glyph(36, 44, 39, 52), glyph(41, 44, 44, 52), glyph(46, 44, 49, 52));
  for (const other of [below, asTall, asMany]) {
    expect(withPieces([word, other])).toEqual([word, other]);
  }
});

test("a row far down and across a large page takes its pieces, too", () => {
  const far = ({ left, top, right, bottom }: Glyph) =>
    glyph(left + 4000, top + 3000, right + 4000, bottom + 3000);
  const piece = far(glyph(38, 39, 47, 47));
  const row = level(...word.glyphs.map(far));
  expect(withPieces([word, row, level(piece)])).toEqual([word, level(...row.glyphs, piece)]);
});
