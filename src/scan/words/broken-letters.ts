import { addTo, type Box, boxAround } from "../../base/index.ts";
import type { Glyph } from "./glyphs.ts";
import { type Extent, extentIn } from "./neighbours.ts";
import type { WordLine } from "./word-lines.ts";

/** How far a piece of a letter may stick out of its row, in heights. */
const OUT = 0.15;
/** A row of pieces is no taller than this, in heights of the row that they lie in. */
const PIECES = 0.9;
/** A letter breaks into no more pieces that stand in one row of their own. */
const MOST_PIECES = 3;
/** Rows are looked for in squares of so many pixels. */
const CELL = 64;
const cellAt = (x: number, y: number) => Math.floor(y / CELL) * 65_536 + Math.floor(x / CELL);

const tallOf = ({ low, high }: Extent) => high - low;

/** Rows with the pieces of broken letters in them: what lies wholly within another row is no row of its own. */
export function withPieces(rows: readonly WordLine[]): readonly WordLine[] {
  const boxes = new Map(rows.map((row) => [row, boxAround(row.glyphs)]));
  const byCell = new Map<number, WordLine[]>();
  for (const [row, { left, top, right, bottom }] of boxes) {
    if (row.glyphs.length < 2) continue;
    for (let y = top; y < bottom + CELL; y += CELL) {
      for (let x = left; x < right + CELL; x += CELL) {
        addTo(byCell, cellAt(Math.min(x, right), Math.min(y, bottom)), row);
      }
    }
  }
  const more = new Map<WordLine, Glyph[]>();
  const taken = new Set<WordLine>();
  const few = rows.filter(({ glyphs }) => glyphs.length <= MOST_PIECES);
  for (const row of few.sort((a, b) => b.glyphs.length - a.glyphs.length)) {
    const box = boxes.get(row) as Box;
    const near = byCell.get(cellAt((box.left + box.right) / 2, (box.top + box.bottom) / 2)) ?? [];
    const outer = near.find(
      (one) => !taken.has(one) && holds(one, boxes.get(one) as Box, row, box),
    );
    if (!outer) continue;
    taken.add(row);
    for (const glyph of row.glyphs) addTo(more, outer, glyph);
  }
  return rows
    .filter((row) => !taken.has(row))
    .map((row) => ({ ...row, glyphs: [...row.glyphs, ...(more.get(row) ?? [])] }));
}

function holds({ way, glyphs }: WordLine, outer: Box, inner: WordLine, box: Box): boolean {
  if (glyphs.length < 2 || glyphs.length <= inner.glyphs.length) return false;
  const [own, other] = [extentIn(outer, way), extentIn(box, way)];
  const tall = tallOf(own);
  const out = OUT * tall;
  return (
    tallOf(other) <= (inner.way === way ? PIECES : 1) * tall &&
    other.from >= own.from - out &&
    other.to <= own.to + out &&
    other.low >= own.low - out &&
    other.high <= own.high + out
  );
}
