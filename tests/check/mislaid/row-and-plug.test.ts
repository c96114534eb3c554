/** A row one place off and the whole plug one place off are one thing only where they move alike. */
import { expect, test } from "vitest";
import { hypothesesFor } from "../../../src/check/mislaid/hypotheses.ts";
import { type Hypothesis, isPartOf } from "../../../src/check/mislaid/hypothesis.ts";
import type { Plug } from "../../../src/job/index.ts";

/** Marks as they lie on the face, line by line. */
function plug(...lines: readonly string[]): Plug {
  const cavities = lines.flatMap((line, y) =>
    [...line].map((mark, x) => ({ mark, at: [5 * x, 5 * y] as [number, number] })),
  );
  return { id: "X1", side: "wire", cavities: cavities.sort((a, b) => (a.mark < b.mark ? -1 : 1)) };
}

/** Of every row's shift the shifts of the whole plug that it is part of, as `mark>mark`. */
function partsOf(face: Plug): readonly string[] {
  const shifts = hypothesesFor(face, []).filter(({ mishap }) => mishap.is === "shifted");
  const isWhole = ({ really }: Hypothesis) => really.size === face.cavities.length;
  const moves = ({ really }: Hypothesis) =>
    [...really].map(([mark, to]) => `${mark}>${to ?? ""}`).join(" ");
  return shifts
    .filter((one) => !isWhole(one))
    .flatMap((row) =>
      shifts
        .filter((one) => isWhole(one) && isPartOf(row, one))
        .map((whole) => `${moves(row)} in ${moves(whole)}`),
    );
}

test("marks that run along the rows", () => {
  expect(partsOf(plug("ABC", "DEF"))).toEqual([
    "A>B B>C C> in A>B B>C C>D D>E E>F F>",
    "A> B>A C>B in A> B>A C>B D>C E>D F>E",
    "D>E E>F F> in A>B B>C C>D D>E E>F F>",
    "D> E>D F>E in A> B>A C>B D>C E>D F>E",
  ]);
});

test("marks that run from right to left: the other way round", () => {
  expect(partsOf(plug("CBA", "FED"))).toEqual([
    "C>B B>A A> in A> B>A C>B D>C E>D F>E",
    "C> B>C A>B in A>B B>C C>D D>E E>F F>",
    "F>E E>D D> in A> B>A C>B D>C E>D F>E",
    "F> E>F D>E in A>B B>C C>D D>E E>F F>",
  ]);
});

test("marks that run down the columns: a row is moved as no shift of the plug moves it", () => {
  expect(partsOf(plug("ACE", "BDF"))).toEqual([]);
});
