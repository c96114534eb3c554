import fc from "fast-check";
import { expect, test } from "vitest";
import { cheapestAssignment } from "../../src/check/assignment.ts";

const total = (cost: readonly (readonly number[])[], columns: readonly number[]) =>
  columns.reduce((sum, column, row) => sum + (cost[row]?.[column] ?? 0), 0);

function permutations(n: number): number[][] {
  if (n === 0) return [[]];
  return permutations(n - 1).flatMap((one) =>
    Array.from({ length: n }, (_, at) => [...one.slice(0, at), n - 1, ...one.slice(at)]),
  );
}

test("is as cheap as the best of all permutations", () => {
  const square = fc.integer({ min: 1, max: 6 }).chain((n) =>
    fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: n, maxLength: n }), {
      minLength: n,
      maxLength: n,
    }),
  );
  fc.assert(
    fc.property(square, (cost) => {
      const columns = cheapestAssignment(cost);
      expect(new Set(columns).size).toBe(cost.length);
      const best = Math.min(...permutations(cost.length).map((one) => total(cost, one)));
      expect(total(cost, columns)).toBe(best);
    }),
  );
});
