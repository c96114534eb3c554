import { expect, test } from "vitest";
import { pathRuns, sceneOf, shownOf } from "../../../src/session/index.ts";
import { drawing } from "./drawing.ts";

const job = drawing(
  [
    { id: "A1", kind: "module", at: [0, 0], size: [100, 100], pins: [{ id: "1", at: [50, 0] }] },
    { id: "X1", kind: "splice", at: [200, 0] },
    { id: "X2", kind: "ground", at: [200, 80] },
  ],
  [
    // Drawn against the way the path runs.
    { id: "W1", from: "X1:1", to: "A1:1", path: [[120, 0]] },
    { id: "W2", from: "X1:1", to: "X2:1" },
  ],
);
const scene = sceneOf(job.diagram, "s1");

test("a path starts at the pin and follows the wires' own lines, whichever way they were drawn", () => {
  const runs = pathRuns(scene, ["W1", "X1", "W2", "X2"], "A1:1");
  expect(runs).toEqual([
    {
      points: [
        [50, 0],
        [120, 0],
        [200, 0],
      ],
      start: 0,
      length: 150,
    },
    {
      points: [
        [200, 0],
        [200, 80],
      ],
      start: 150,
      length: 80,
    },
  ]);
});

test("a part on the way is crossed from pin to pin", () => {
  const through = drawing(
    [
      { id: "X1", kind: "ground", at: [0, 0] },
      { id: "F1", kind: "fuse", at: [200, 0] },
      { id: "X2", kind: "ground", at: [400, 0] },
    ],
    [
      { id: "W1", from: "X1:1", to: "F1:1" },
      { id: "W2", from: "F1:2", to: "X2:1" },
    ],
  );
  const runs = pathRuns(sceneOf(through.diagram, "s1"), ["W1", "F1", "W2"], "X1:1");
  const covered = runs.reduce((sum, run) => sum + run.length, 0);
  expect(covered).toBeCloseTo(400);
});

test("only as much of a run shows as the path has reached", () => {
  const run = {
    points: [
      [0, 0],
      [100, 0],
      [100, 100],
    ],
    start: 50,
    length: 200,
  } as const;
  expect(shownOf(run, 40)).toEqual([]);
  expect(shownOf(run, 90)).toEqual([
    [0, 0],
    [40, 0],
  ]);
  expect(shownOf(run, 200)).toEqual([
    [0, 0],
    [100, 0],
    [100, 50],
  ]);
  expect(shownOf(run, 999)).toEqual(run.points);
});
