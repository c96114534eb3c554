import { expect, test } from "vitest";
import { asPart, finished, inBands, type Sliced } from "../../src/scan/sliced.ts";

const WIDE = { width: 1_000_000, height: 5 };

test("bands meet every row once, and tell how much is done", () => {
  const rows: number[] = [];
  const done = [
    ...inBands(WIDE, (top, bottom) => {
      for (let y = top; y < bottom; y++) rows.push(y);
    }),
  ];
  expect(rows).toEqual([0, 1, 2, 3, 4]);
  expect(done).toEqual([0.2, 0.4, 0.6, 0.8, 1]);
});

test("work may be left between two bands", () => {
  let rows = 0;
  const work = inBands(WIDE, () => rows++);
  work.next();
  work.next();
  work.return();
  expect(work.next().done).toBe(true);
  expect(rows).toBe(2);
});

test("a part reports its share of the whole and hands on its result", () => {
  function* whole(): Sliced<string> {
    yield 0.5;
    yield 1;
    return "done";
  }
  expect([...asPart(whole(), 0.2, 0.6)]).toEqual([0.4, 0.6]);
  expect(finished(asPart(whole(), 0.2, 0.6))).toBe("done");
});
