import fc from "fast-check";
import { expect, test } from "vitest";
import { cheapestAssignment, cheapestChoices } from "../../src/check/assignment.ts";

const total = (cost: readonly (readonly number[])[], columns: readonly number[]) =>
  columns.reduce((sum, column, row) => sum + (cost[row]?.[column] ?? 0), 0);

function permutations(n: number): number[][] {
  if (n === 0) return [[]];
  return permutations(n - 1).flatMap((one) =>
    Array.from({ length: n }, (_, at) => [...one.slice(0, at), n - 1, ...one.slice(at)]),
  );
}

const squareUpTo = (dearest: number) =>
  fc.integer({ min: 1, max: 6 }).chain((n) =>
    fc.array(fc.array(fc.integer({ min: 0, max: dearest }), { minLength: n, maxLength: n }), {
      minLength: n,
      maxLength: n,
    }),
  );

test("is as cheap as the best of all permutations", () => {
  fc.assert(
    fc.property(squareUpTo(9), (cost) => {
      const { columns } = cheapestAssignment(cost);
      expect(new Set(columns).size).toBe(cost.length);
      const best = Math.min(...permutations(cost.length).map((one) => total(cost, one)));
      expect(total(cost, columns)).toBe(best);
    }),
  );
});

test("a row's choices are its columns in every permutation that is as cheap", () => {
  fc.assert(
    fc.property(squareUpTo(2), (cost) => {
      const assignment = cheapestAssignment(cost);
      const best = total(cost, assignment.columns);
      const all = permutations(cost.length).filter((one) => total(cost, one) === best);
      const choices = cost.map((_, row) => [...new Set(all.map((one) => one[row]))].sort());
      expect(cheapestChoices(assignment).map((one) => [...one].sort())).toEqual(choices);
    }),
  );
});
