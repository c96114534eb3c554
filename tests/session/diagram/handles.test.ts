import { expect, test } from "vitest";
import {
  boxAfter,
  handleAt,
  handlesOf,
  moveCorner,
  moveSegment,
  routedWire,
  sceneOf,
} from "../../../src/session/index.ts";
import { drawing, edit, found } from "./drawing.ts";

const job = drawing(
  [
    { id: "F1", kind: "fuse", at: [0, 0] },
    { id: "F2", kind: "fuse", at: [400, 100] },
    { id: "A1", kind: "module", at: [200, 400], size: [200, 100], pins: [{ id: "1" }] },
  ],
  [
    {
      id: "W1",
      from: "F1:2",
      to: "F2:1",
      path: [
        [200, 0],
        [200, 100],
      ],
    },
  ],
);
const scene = sceneOf(job.diagram, "s1");

test("a wire has a handle on each end and corner, a module on its sides, several things none", () => {
  expect(handlesOf(scene, ["W1"], 1).map((handle) => handle.grab)).toEqual([
    "end",
    "corner",
    "corner",
    "end",
  ]);
  const sides = handlesOf(scene, ["A1"], 1).filter((handle) => handle.grab === "size");
  expect(sides).toHaveLength(8);
  expect(handlesOf(scene, ["A1", "W1"], 1)).toEqual([]);
});

test("the nearest handle within reach is taken", () => {
  const handles = handlesOf(scene, ["W1"], 1);
  expect(handleAt(handles, [203, 97], 10)).toMatchObject({ grab: "corner", index: 1 });
  expect(handleAt(handles, [300, 50], 10)).toBeNull();
});

test("a side taken elsewhere leaves the opposite side where it is", () => {
  const after = boxAfter(scene, "A1", [1, 0], [350, 999]);
  expect(after).toEqual({ size: [250, 100], middle: [225, 400] });
  const corner = boxAfter(scene, "A1", [-1, -1], [0, 300]);
  expect(corner).toEqual({ size: [300, 150], middle: [150, 375] });
});

test("a box is never turned inside out", () => {
  const after = boxAfter(scene, "A1", [1, 0], [-900, 400]);
  expect(after?.size[0]).toBeGreaterThan(0);
});

test("a segment pushed aside stays upright and takes its neighbours along", () => {
  const after = edit(job, (draft) => moveSegment(draft, "W1", 1, [200, 50], [260, 80]));
  expect(found(after.diagram.wires, "W1").path).toEqual([
    [260, 0],
    [260, 100],
  ]);
});

test("a segment that ends on a pin leaves it by a step", () => {
  const after = edit(job, (draft) => moveSegment(draft, "W1", 0, [100, 0], [100, 40]));
  const run = sceneOf(after.diagram, "s1").wireById.get("W1")?.points ?? [];
  expect(run[0]).toEqual(scene.pins.get("F1:2")?.at);
  expect(run.slice(1, 4)).toEqual([
    [run[0]?.[0], 40],
    [200, 40],
    [200, 100],
  ]);
});

test("a corner goes where it is taken and no other", () => {
  const after = edit(job, (draft) => moveCorner(draft, "W1", 0, [150, -20]));
  expect(found(after.diagram.wires, "W1").path).toEqual([
    [150, -20],
    [200, 100],
  ]);
});

test("a wire laid without a pointer runs at right angles, or a little way out where it goes on", () => {
  const plan = routedWire(scene, "F1:1", "A1:1", 10);
  const run = [scene.pins.get("F1:1")?.at, ...(plan?.corners ?? []), scene.pins.get("A1:1")?.at];
  for (let i = 1; i < run.length; i++) {
    const [a, b] = [run[i - 1], run[i]];
    expect(a?.[0] === b?.[0] || a?.[1] === b?.[1]).toBe(true);
  }
  const open = routedWire(scene, "F1:1", null, 10);
  const start = scene.pins.get("F1:1")?.at ?? [0, 0];
  expect(open?.to).toEqual({ on: "open", at: [start[0] - 50, start[1]] });
  expect(routedWire(scene, "no:1", null, 10)).toBeNull();
});
