import fc from "fast-check";
import type { WordColumn } from "../../../src/check/rearranged/word-column.ts";

/** A column whose equal words fit at the same places; which those are is drawn by lot. */
export const someColumn = (most: number): fc.Arbitrary<WordColumn> =>
  fc.integer({ min: 2, max: most }).chain((size) =>
    fc
      .record({
        texts: fc.array(fc.constantFrom("A", "B", "C", "D", "E"), {
          minLength: size,
          maxLength: size,
        }),
        places: fc.dictionary(
          fc.constantFrom("A", "B", "C", "D", "E"),
          fc.array(fc.boolean(), { minLength: size, maxLength: size }),
          { minKeys: 5, maxKeys: 5 },
        ),
      })
      .map(({ texts, places }) => columnOf(texts, (text, place) => places[text]?.[place] ?? false)),
  );

export function columnOf(
  texts: readonly string[],
  fitsText: (text: string, place: number) => boolean,
): WordColumn {
  const fits = (word: number, place: number) => fitsText(texts[word] ?? "", place);
  return { texts, fits, wrong: [...texts.keys()].filter((index) => !fits(index, index)) };
}

/** Every order of that many things, as the place of each. */
export function orders(size: number): number[][] {
  if (size === 0) return [[]];
  return orders(size - 1).flatMap((one) =>
    Array.from({ length: size }, (_, at) => [...one.slice(0, at), size - 1, ...one.slice(at)]),
  );
}

/** By trying every order: how few words have to move, and what the column then says in each way. */
export function byTrying({ texts, fits }: WordColumn): {
  readonly count: number;
  readonly ways: ReadonlySet<string>;
} | null {
  const right = orders(texts.length).filter((order) => order.every((to, word) => fits(word, to)));
  const moved = (order: readonly number[]) => order.filter((to, word) => to !== word).length;
  const count = Math.min(...right.map(moved));
  if (right.length === 0 || count === 0) return null;
  const said = (order: readonly number[]) => {
    const column = [...texts];
    for (const [word, to] of order.entries()) column[to] = texts[word] ?? "";
    return column.join(" ");
  };
  return { count, ways: new Set(right.filter((order) => moved(order) === count).map(said)) };
}
