import { expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { neighbours } from "../../../src/scan/words/neighbours.ts";

const [APART, ASIDE] = [6, 4];

/** Two hundred places on a square of a hundred pixels, from left to right. */
function scattered(seed: number) {
  const random = seededRandom(seed);
  const places = Array.from({ length: 200 }, () => {
    const [from, low] = [random.below(100), random.below(100) - 50];
    return { at: { from, to: from + random.below(9), low, high: low + random.below(9) } };
  });
  return places.sort((one, other) => one.at.from - other.at.from);
}

test("all pairs that may be one row are looked at, each once and in order, and few others", () => {
  const sorted = scattered(1);
  const looked: string[] = [];
  finished(neighbours(sorted, APART, ASIDE, (n, m) => looked.push(`${n} ${m}`)));
  const near: string[] = [];
  let all = 0;
  for (const [n, { at: one }] of sorted.entries()) {
    for (const [m, { at: other }] of sorted.entries()) {
      if (m <= n) continue;
      all++;
      const across = Math.abs(one.low + one.high - other.low - other.high) / 2;
      if (other.from <= one.to + APART && across <= ASIDE) near.push(`${n} ${m}`);
    }
  }
  expect(near.length).toBeGreaterThan(100);
  expect(looked.filter((pair) => near.includes(pair))).toEqual(near);
  expect(new Set(looked).size).toBe(looked.length);
  expect(looked.length).toBeLessThan(all / 10);
});
