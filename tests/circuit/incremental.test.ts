import fc from "fast-check";
import { expect, test } from "vitest";
import { BegunMeshes } from "../../src/circuit/solve/begun-meshes.ts";
import { planElimination, withBranches } from "../../src/circuit/solve/elimination-plan.ts";
import {
  changedMesh,
  meshOf,
  piecesOf,
  voltsOf,
  Workspace,
} from "../../src/circuit/solve/star-mesh.ts";
import "../support/seed.ts";

const ends = (nodeCount: number, least: number, most: number) =>
  fc.array(fc.record({ a: fc.nat(nodeCount - 1), b: fc.nat(nodeCount - 1) }), {
    minLength: least,
    maxLength: most,
  });
const siemens = fc.oneof(
  { weight: 1, arbitrary: fc.constant(0) },
  { weight: 3, arbitrary: fc.double({ min: 1e-7, max: 1e6, noNaN: true }) },
);

/** A network, further branches, and rounds of changes: [branch, siemens] each. */
const story = fc.integer({ min: 2, max: 14 }).chain((nodeCount) =>
  fc.record({
    nodeCount: fc.constant(nodeCount),
    first: ends(nodeCount, 1, 30),
    later: ends(nodeCount, 0, 3),
    start: fc.array(siemens, { minLength: 33, maxLength: 33 }),
    rounds: fc.array(fc.array(fc.tuple(fc.nat(32), siemens), { maxLength: 4 }), { maxLength: 6 }),
    last: fc.uniqueArray(fc.nat(nodeCount - 1), { maxLength: 2 }),
  }),
);

test("after any changes the mesh is bit for bit what it would be made afresh", () => {
  fc.assert(
    fc.property(story, ({ nodeCount, first, later, start, rounds, last }) => {
      const plan = planElimination(nodeCount, first, last);
      const values = Float64Array.from(start.slice(0, first.length));
      let mesh = meshOf(plan, values);
      const work = new Workspace(nodeCount);
      for (const round of rounds) {
        const changed = round.filter(([branch]) => branch < first.length);
        for (const [branch, value] of changed) values[branch] = value;
        mesh = changedMesh(
          mesh,
          plan,
          values,
          changed.map(([branch]) => branch),
          work,
        );
        const fresh = meshOf(plan, values);
        expect(mesh.sums).toEqual(fresh.sums);
        expect(mesh.siemens).toEqual(fresh.siemens);
      }
      // and with something held between its nodes
      const more = withBranches(plan, later);
      const all = Float64Array.from([
        ...values,
        ...start.slice(first.length, first.length + later.length),
      ]);
      const added = later.map((_, index) => first.length + index);
      const extended = changedMesh(mesh, more, all, added, work);
      const fresh = meshOf(more, all);
      expect(extended.sums).toEqual(fresh.sums);
      expect(extended.siemens).toEqual(fresh.siemens);
    }),
    { numRuns: 500 },
  );
});

test("a mesh begun from a kept one is bit for bit what it would be made afresh", () => {
  let near = 0;
  fc.assert(
    fc.property(story, ({ nodeCount, first, start, rounds, last }) => {
      // as often as there are parts in a machine: most of them the same from one to the next
      const ends = Array.from({ length: 10 }, () => first).flat();
      const plan = planElimination(nodeCount, ends, last);
      const begun = new BegunMeshes(plan, new Workspace(nodeCount));
      const values = Float64Array.from(ends, (_, index) => start[index % 33] as number);
      let before: ReturnType<typeof meshOf> | null = null;
      for (const round of [[], ...rounds]) {
        for (const [branch, value] of round) if (branch < ends.length) values[branch] = value;
        const found = begun.of(values.slice());
        if (found === before) near++;
        before = found;
        const fresh = meshOf(plan, values);
        expect(found.sums).toEqual(fresh.sums);
        expect(found.siemens).toEqual(fresh.siemens);
      }
    }),
    { numRuns: 300 },
  );
  expect(near).toBeGreaterThan(100);
});

test("branches added later give what they give when they are planned from the start", () => {
  fc.assert(
    fc.property(story, ({ nodeCount, first, later, start, last }) => {
      const both = [...first, ...later];
      const values = Float64Array.from(start.slice(0, both.length));
      const planned = meshOf(planElimination(nodeCount, both, last), values);
      const added = meshOf(withBranches(planElimination(nodeCount, first, last), later), values);
      const pieces = piecesOf(planned).piece;
      const others = piecesOf(added).piece;
      for (let node = 0; node < nodeCount; node++) {
        for (let other = 0; other < nodeCount; other++) {
          const together = pieces[node] === pieces[other];
          expect(others[node] === others[other]).toBe(together);
          if (!together || node === other) continue;
          const injected = new Float64Array(nodeCount);
          injected[node] = 1;
          injected[other] = -1;
          const across = (volts: Float64Array) => (volts[node] ?? 0) - (volts[other] ?? 0);
          const wanted = across(voltsOf(planned, injected));
          expect(Math.abs(across(voltsOf(added, injected)) - wanted)).toBeLessThanOrEqual(
            1e-9 * Math.abs(wanted) + 1e-12,
          );
        }
      }
    }),
    { numRuns: 100 },
  );
});
