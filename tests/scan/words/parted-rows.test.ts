import { expect, test } from "vitest";
import { bitsOf } from "../../../src/scan/raster.ts";
import type { Glyph } from "../../../src/scan/words/glyphs.ts";
import { partedRows } from "../../../src/scan/words/parted-rows.ts";
import type { WordLine } from "../../../src/scan/words/word-lines.ts";

const row = (left: number, top: number, letters: number, tall = 20): WordLine => ({
  way: "level",
  glyphs: Array.from(
    { length: letters },
    (_, n): Glyph => ({
      left: left + 14 * n,
      right: left + 14 * n + 9,
      top,
      bottom: top + tall - 1,
      area: 80,
      numbers: [n],
    }),
  ),
});

/** A page with an upright line all down it. */
const crossedAt = (x: number) => {
  const lines = bitsOf(200, 100);
  for (let y = 0; y < 100; y++) lines.data[y * 200 + x] = 1;
  return lines;
};

test("two rows with a line between them may have lost a letter in it", () => {
  const [before, after] = [row(10, 40, 3), row(64, 40, 4)];
  expect([...partedRows([before, after], crossedAt(55), bitsOf(200, 100))]).toEqual([
    before,
    after,
  ]);
  expect([...partedRows([before, after], crossedAt(150), bitsOf(200, 100))]).toEqual([]);
});

test("rows far apart, of other heights or beside one another are two words on either side of a line", () => {
  const before = row(10, 40, 3);
  for (const after of [row(90, 40, 4), row(64, 43, 4, 14), row(64, 52, 4)]) {
    expect([...partedRows([before, after], crossedAt(55), bitsOf(200, 100))]).toEqual([]);
  }
});

test("letters that have grown together with a line part a row over a wider gap", () => {
  const [before, after] = [row(10, 40, 3), row(100, 40, 4)];
  const none = bitsOf(200, 100);
  expect([...partedRows([before, after], crossedAt(70), none)]).toEqual([]);
  expect([...partedRows([before, after], none, crossedAt(70))]).toEqual([before, after]);
  // A bar that does not cross them all is a hyphen, or a symbol's.
  const bar = bitsOf(200, 100);
  for (let y = 48; y < 52; y++) bar.data.fill(1, y * 200 + 60, y * 200 + 80);
  expect([...partedRows([before, after], none, bar)]).toEqual([]);
  const far = row(130, 40, 4);
  expect([...partedRows([before, far], none, crossedAt(70))]).toEqual([]);
});
