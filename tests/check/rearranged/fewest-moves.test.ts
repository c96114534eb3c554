import fc from "fast-check";
import { expect, test } from "vitest";
import { fewestMoves } from "../../../src/check/rearranged/fewest-moves.ts";
import { byTrying, columnOf, someColumn } from "./columns.ts";

test("moves as few words as the best of all orders, and knows all orders that move as few", () => {
  let tied = 0;
  let only = 0;
  fc.assert(
    fc.property(someColumn(6), (column) => {
      const found = fewestMoves(column);
      const tried = byTrying(column);
      expect(found?.count).toBe(tried?.count);
      if (!found || !tried) return;
      const ways = [...tried.ways].map((way) => way.split(" "));
      const choices = column.texts.map((_, place) => [...new Set(ways.map((way) => way[place]))]);
      expect(found.choices.map((some) => [...some].sort())).toEqual(
        choices.map((some) => some.sort()),
      );
      expect(found.isOnly).toBe(tried.ways.size === 1);
      const said: string[] = [];
      for (const [word, place] of found.places.entries()) said[place] = column.texts[word] ?? "";
      expect([...tried.ways]).toContain(said.join(" "));
      if (found.isOnly) only++;
      else tied++;
    }),
    { numRuns: 3000 },
  );
  expect(Math.min(tied, only)).toBeGreaterThan(20);
});

test("a column of hundreds of words is no matter where the wrong ones trade places", () => {
  const texts = Array.from({ length: 400 }, (_, index) => `W${index}`);
  const printed = texts.with(7, "W300").with(300, "W7");
  const found = fewestMoves(columnOf(printed, (text, place) => text === texts[place]));
  expect(found?.count).toBe(2);
  expect(found?.isOnly).toBe(true);
});
