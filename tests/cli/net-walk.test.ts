import { expect, test } from "vitest";
import type { Point } from "../../src/base/index.ts";
import { type Lines, walkOf } from "../../src/cli/net-walk.ts";

const end = (at: Point, ...terminals: string[]) => ({ at, kind: "end", terminals }) as const;
const joint = (at: Point) => ({ at, kind: "joint", terminals: [] }) as const;

/** Every straight piece of the lines, whichever way, as text. */
const piece = (a: Point, b: Point) => [String(a), String(b)].sort().join(" - ");
const pieces = (points: readonly Point[]) =>
  points.slice(1).map((point, n) => piece(points[n] as Point, point));
const all = (lines: Lines) => new Set(lines.runs.flatMap(({ points }) => pieces(points)));

test("a line from terminal to terminal is walked once, from a terminal, with its corners", () => {
  const line: Lines = {
    nodes: [end([0, 0]), end([9, 5], "A:1")],
    runs: [
      {
        from: 0,
        to: 1,
        points: [
          [0, 0],
          [9, 0],
          [9, 5],
        ],
      },
    ],
  };
  expect(walkOf(line)).toEqual([
    [9, 5],
    [9, 0],
    [0, 0],
  ]);
});

test("branches and rings: every piece is walked, nothing else is, and no way back at the end", () => {
  const nodes = [end([0, 0], "A:1"), joint([5, 0]), end([9, 0]), joint([5, 5]), end([5, 9], "B:1")];
  const run = (from: number, to: number, ...corners: Point[]) => ({
    from,
    to,
    points: [nodes[from]?.at as Point, ...corners, nodes[to]?.at as Point],
  });
  const lines: Lines = {
    nodes,
    runs: [
      run(0, 1),
      run(1, 2),
      run(3, 1),
      run(3, 4),
      run(1, 3, [8, 2], [8, 5]),
      run(3, 3, [1, 5], [1, 7]),
    ],
  };
  const walk = walkOf(lines);
  expect(walk[0]).toEqual([0, 0]);
  expect(new Set(pieces(walk))).toEqual(all(lines));
  const last = pieces(walk).at(-1);
  expect(pieces(walk).filter((one) => one === last)).toHaveLength(1);
});

test("pieces that nothing joins follow one another; ten thousand lines in a row are no trouble", () => {
  const lone: Lines = { nodes: [end([1, 1]), end([5, 5])], runs: [] };
  expect(walkOf(lone)).toEqual([
    [1, 1],
    [5, 5],
  ]);
  const nodes = Array.from({ length: 10_001 }, (_, n) => joint([n, 0]));
  const runs = nodes.slice(1).map(({ at }, n) => ({
    from: n,
    to: n + 1,
    points: [[n, 0] as Point, at],
  }));
  expect(walkOf({ nodes, runs })).toHaveLength(10_001);
});
