import { expect, test } from "vitest";
import { keptLast } from "../../src/base/index.ts";

test("what was worked out last is kept while the same objects are asked with, and no longer", () => {
  let worked = 0;
  const pair = keptLast((one: object, other: object | null) => {
    worked++;
    return [one, other];
  });
  const [a, b] = [{}, {}];
  const first = pair(a, null);
  expect(pair(a, null)).toBe(first);
  expect(pair(a, b)).toEqual([a, b]);
  expect(pair({}, b)).not.toBe(first);
  expect(pair(a, null)).not.toBe(first);
  expect(worked).toBe(4);
});
