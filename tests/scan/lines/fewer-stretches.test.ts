import { expect, test } from "vitest";
import { withoutStretches } from "../../../src/scan/lines/fewer-stretches.ts";
import { type Skeleton, type SkeletonNode, skeletonOf } from "../../../src/scan/lines/skeleton.ts";
import { bitsOf } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";

/** Thin lines as a picture of characters. */
function skeleton(rows: readonly string[]): Skeleton {
  const lines = bitsOf((rows[0] as string).length, rows.length);
  rows.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) if (row[x] === "#") lines.data[y * lines.width + x] = 1;
  });
  return finished(skeletonOf(lines));
}

const upright = ({ stretches, nodes }: Skeleton) =>
  stretches.flatMap(({ from, to }, n) => {
    const [a, b] = [nodes[from] as SkeletonNode, nodes[to] as SkeletonNode];
    return Math.abs(a.y - b.y) > Math.abs(a.x - b.x) ? [n] : [];
  });

test("a line goes on as one where what met it is taken away", () => {
  const all = skeleton([
    "                 ",
    "       #         ",
    "       #         ",
    "       #         ",
    " ############### ",
    "                 ",
  ]);
  expect(all.stretches).toHaveLength(3);
  const left = finished(withoutStretches(all, new Set(upright(all)), 0));
  expect(left.stretches).toHaveLength(1);
  expect(left.nodes).toHaveLength(2);
  const [line] = left.stretches;
  const places = [...(line?.pixels ?? [])].map((at) => at % all.width);
  const sorted = [...places].sort((a, b) => a - b);
  expect(line?.from === 0 ? places : [...places].reverse()).toEqual(sorted);
  expect(line?.length).toBeCloseTo(14, 0);
});

test("what stood between two forks of a letter goes with it where it is tiny", () => {
  const all = skeleton([
    "                 ",
    "    #     #      ",
    "    #     #      ",
    "    #######      ",
    "       #         ",
    "       #         ",
    " ############### ",
    "                 ",
  ]);
  const arms = all.stretches.flatMap(({ from, to }, n) =>
    [from, to].some((node) => (all.nodes[node] as SkeletonNode).y === 1) ? [n] : [],
  );
  expect(finished(withoutStretches(all, new Set(arms), 4)).stretches).toHaveLength(1);
  expect(finished(withoutStretches(all, new Set(arms), 1)).stretches).toHaveLength(3);
});
