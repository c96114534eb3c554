import { expect, test } from "vitest";
import { countLeading } from "../../src/base/index.ts";

test.each([
  [[], 0],
  [[1, 2, 3], 3],
  [[5, 6], 0],
  [[1, 4, 4, 5, 9], 3],
])("of %j as many are less than 5", (list, count) => {
  expect(countLeading<number>(list, (one) => one < 5)).toBe(count);
});
