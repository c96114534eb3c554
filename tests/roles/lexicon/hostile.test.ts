import { expect, test } from "vitest";
import { ROLE_NAMES } from "../../../src/job/index.ts";
import { readWord } from "../../../src/roles/lexicon/read-word.ts";
import { tokensOf } from "../../../src/roles/lexicon/tokens.ts";

const LONG = 10_000;

test.each([
  ["nothing", ""],
  ["blanks", " \t\u00a0\u3000"],
  ["an emoji", "💡"],
  ["a family of emoji", "👩‍👩‍👧"],
  ["half a character", "\ud83d"],
  ["marks on nothing", "\u0301\u0308\u3099"],
  ["signs", "⏚ ~ = / . , : ; ( )"],
  ["a name that every object has", "constructor __proto__ toString"],
  ["another alphabet", "ΜΑΖΑ ПИТАНИЕ"],
])("%s is no word", (_, printed) => expect(readWord(printed)).toEqual([]));

test.each([
  ["digits", "1".repeat(LONG)],
  ["digits before letters", `${"1".repeat(LONG)}AB`],
  ["one letter", "A".repeat(LONG)],
  ["marks", `E${"\u0301".repeat(LONG)}`],
  ["words", "MASSE ".repeat(LONG / 6)],
  ["a compound", "LAMPEN".repeat(LONG / 6)],
  ["kana", "センサ".repeat(LONG / 3)],
  ["dots", "A.".repeat(LONG / 2)],
  ["a character that stands for eighteen", "\ufdfa".repeat(LONG)],
  ["as much as is read of it", "11111AB-".repeat(62)],
])("ten thousand characters of %s are read to an end", (_, printed) => {
  for (const meaning of readWord(printed)) expect(ROLE_NAMES).toContain(meaning.role);
});

test("a mark of its own letter or composed, an emoji beside it: the same word", () => {
  expect(readWord("ZU\u0308NDUNG")).toEqual(readWord("ZÜNDUNG"));
  expect(readWord("MASSE💡")).toEqual(readWord("MASSE"));
  expect(tokensOf("ﬁn ＯＵＴ ½")).toEqual(["FIN", "OUT", "1", "2"]);
});
