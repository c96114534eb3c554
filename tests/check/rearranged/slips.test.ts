import fc from "fast-check";
import { expect, test } from "vitest";
import { fewestMoves } from "../../../src/check/rearranged/fewest-moves.ts";
import { fittingSlips, type Slip } from "../../../src/check/rearranged/slips.ts";
import { byTrying, columnOf, someColumn } from "./columns.ts";

const LETTERS = [..."ABCDEFGHIJ"];
/** Ten words, each of which fits at one place only. */
const plain = (printed: readonly string[]) =>
  columnOf(printed, (text, place) => LETTERS[place] === text);

/** The slip made in a right column, written out with plain list operations. */
function made(slip: Slip): readonly string[] {
  const { first, last } = slip;
  const [before, run, after] = [
    LETTERS.slice(0, first),
    LETTERS.slice(first, last + 1),
    LETTERS.slice(last + 1),
  ];
  const around = (middle: readonly string[]) => [...before, ...middle, ...after];
  switch (slip.is) {
    case "exchanged":
      return around([run.at(-1) ?? "", ...run.slice(1, -1), run[0] ?? ""]);
    case "shifted":
      return around([...run.slice(-slip.by), ...run.slice(0, -slip.by)]);
    case "mirrored":
      return around(run.toReversed());
    case "turned-in-pairs":
      return around(
        run.flatMap((_, at) => (at % 2 === 0 ? [run[at + 1] ?? "", run[at] ?? ""] : [])),
      );
  }
}

const run = (shortest: number) =>
  fc
    .tuple(fc.nat({ max: LETTERS.length - 1 }), fc.nat({ max: LETTERS.length - 1 }))
    .map(([a, b]) => ({ first: Math.min(a, b), last: Math.max(a, b) }))
    .filter(({ first, last }) => last - first + 1 >= shortest);

const someSlip: fc.Arbitrary<Slip> = fc.oneof(
  run(2).map((ends): Slip => ({ is: "exchanged", ...ends })),
  run(3).map((ends): Slip => ({ is: "shifted", ...ends, by: 1 })),
  run(3).map((ends): Slip => ({ is: "shifted", ...ends, by: -1 })),
  run(5).map((ends): Slip => ({ is: "shifted", ...ends, by: 2 })),
  run(4).map((ends): Slip => ({ is: "mirrored", ...ends })),
  run(4)
    .filter(({ first, last }) => (last - first) % 2 === 1)
    .map((ends): Slip => ({ is: "turned-in-pairs", ...ends })),
);

test("a slip made in a column of words that fit at one place each is told as what it is", () => {
  fc.assert(
    fc.property(someSlip, (slip) => {
      const column = plain(made(slip));
      expect(fewestMoves(column)?.isOnly).toBe(true);
      const found = fittingSlips(column);
      expect(found.map(({ slip: one }) => one)).toEqual([slip]);
      expect(found[0]?.texts).toEqual(LETTERS);
      expect(found[0]?.count).toBe(fewestMoves(column)?.count);
    }),
    { numRuns: 500 },
  );
});

test("undone, no slip leaves a wrong word, and none moves fewer than the fewest", () => {
  let least = 0;
  fc.assert(
    fc.property(someColumn(6), (column) => {
      if (column.wrong.length === 0) return;
      const tried = byTrying(column);
      for (const { texts, count } of fittingSlips(column)) {
        // where the word of a text fits does not depend on where it came from
        const wordOf = (text: string) => column.texts.indexOf(text);
        expect(texts.every((text, place) => column.fits(wordOf(text), place))).toBe(true);
        expect([...texts].sort()).toEqual([...column.texts].sort());
        expect(count).toBeGreaterThanOrEqual(tried?.count ?? Number.POSITIVE_INFINITY);
        if (count !== tried?.count) continue;
        expect([...tried.ways]).toContain(texts.join(" "));
        least++;
      }
    }),
    { numRuns: 2000 },
  );
  expect(least).toBeGreaterThan(50);
});

test("every exchange that is among the fewest moves is found", () => {
  fc.assert(
    fc.property(someColumn(6), (column) => {
      const tried = byTrying(column);
      if (tried?.count !== 2) return;
      const exchanges = fittingSlips(column).filter(({ count }) => count === 2);
      expect(new Set(exchanges.map(({ texts }) => texts.join(" ")))).toEqual(tried.ways);
    }),
    { numRuns: 2000 },
  );
});
