import { expect, test } from "vitest";
import type { ReadDoubt, ReadWord } from "../../../../src/session/index.ts";
import { tornWords } from "../../../../src/session/scan/words/torn-words.ts";
import { readRight } from "./printed-words.ts";

/** A word of letters 20 pixels tall that begins at `from`, 12 pixels a letter. */
const at = (
  from: number,
  text: string,
  doubts: readonly ReadDoubt[] = [],
  { turn = 0, tall = 20 }: { readonly turn?: 0 | 270; readonly tall?: number } = {},
): ReadWord => {
  const to = from + 12 * text.length;
  const box =
    turn === 0
      ? { left: from, top: 100, right: to, bottom: 100 + tall }
      : { left: 100, top: from, right: 100 + tall, bottom: to };
  return { ...readRight({ text, box, turn, tall }), doubts };
};
const torn = (words: readonly ReadWord[], unread: readonly ReadWord[] = []) =>
  [...tornWords(words, unread)].map(({ text }) => text).sort();

test("what stands in line with a word that a line or a stain has harmed may be a piece of the same label", () => {
  for (const turn of [0, 270] as const) {
    expect(torn([at(0, "31", ["cut"], { turn }), at(48, "8 BK", [], { turn })])).toEqual(["8 BK"]);
    // And so is what stands next to that.
    const three = [at(0, "30", ["misfit"]), at(50, "12"), at(98, "GN")];
    expect(torn(three)).toEqual(["12", "GN"]);
  }
});

test("where letters were spoilt whole ones may be missing: a wider gap is one still", () => {
  expect(torn([at(0, "31", ["crowded"]), at(60, "8 BK")])).toEqual(["8 BK"]);
  expect(torn([at(0, "31", ["cut"]), at(56, "8 BK")])).toEqual([]);
});

test("words far apart, of another size, on another line or beside a mere hard one are whole", () => {
  expect(torn([at(0, "31", ["misfit"]), at(68, "8 BK")])).toEqual([]);
  expect(torn([at(0, "31", ["misfit"]), at(40, "8 BK", [], { tall: 12 })])).toEqual([]);
  const below = at(40, "8 BK");
  const { box } = below;
  expect(
    torn([at(0, "31", ["misfit"]), { ...below, box: { ...box, top: 110, bottom: 130 } }]),
  ).toEqual([]);
  expect(torn([at(0, "31", ["unclear"]), at(40, "8 BK")])).toEqual([]);
  expect(torn([at(0, "31", ["misfit"]), at(40, "8 BK", [], { turn: 270 })])).toEqual([]);
});

test("letters that nobody could read make the word next to them a piece; a bit of a symbol does not", () => {
  expect(torn([at(48, "8 BK")], [at(0, "???")])).toEqual(["8 BK"]);
  expect(torn([at(48, "8 BK")], [at(24, "?")])).toEqual([]);
  expect(torn([at(90, "8 BK")], [at(0, "???")])).toEqual([]);
});
