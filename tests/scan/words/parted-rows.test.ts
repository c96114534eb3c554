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
  expect([...partedRows([before, after], crossedAt(55))]).toEqual([before, after]);
  expect([...partedRows([before, after], crossedAt(150))]).toEqual([]);
});

test("rows far apart, of other heights or beside one another are two words on either side of a line", () => {
  const before = row(10, 40, 3);
  for (const after of [row(90, 40, 4), row(64, 43, 4, 14), row(64, 52, 4)]) {
    expect([...partedRows([before, after], crossedAt(55))]).toEqual([]);
  }
});
