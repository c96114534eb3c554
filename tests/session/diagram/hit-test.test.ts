import { expect, test } from "vitest";
import {
  crossingsOf,
  hitAt,
  idsInside,
  liesOnWire,
  sceneOf,
  snap,
} from "../../../src/session/index.ts";
import { drawing } from "./drawing.ts";

const job = drawing(
  [
    { id: "F1", kind: "fuse", at: [0, 0] },
    { id: "F2", kind: "fuse", at: [400, 0] },
    { id: "X1", kind: "ground", at: [200, 100] },
    { id: "X2", kind: "ground", at: [220, -100], turn: 180 },
    {
      id: "A1",
      kind: "module",
      at: [200, 500],
      size: [300, 200],
      pins: [{ id: "1" }, { id: "2" }],
    },
  ],
  [
    { id: "W1", from: "F1:2", to: "F2:1" },
    {
      id: "W2",
      from: "X2:1",
      to: "X1:1",
      path: [
        [210, -100],
        [210, 100],
      ],
    },
  ],
);
const scene = sceneOf(job.diagram, "s1");
const pinOf = (ref: string) => {
  const spot = scene.pins.get(ref);
  if (!spot) throw new Error(`no pin ${ref}`);
  return spot.at;
};

test("a pin is met before the part and the wire that share the place", () => {
  const [x, y] = pinOf("F1:2");
  expect(hitAt(scene, [x + 3, y + 3], 8)).toMatchObject({ on: "pin", ref: "F1:2" });
});

test("the body of a symbol is the part, its line the wire, and empty ground nothing", () => {
  expect(hitAt(scene, [0, 0], 4)).toMatchObject({ on: "part", part: "F1" });
  expect(hitAt(scene, [150, 2], 8)).toMatchObject({ on: "wire", wire: "W1" });
  expect(hitAt(scene, [150, 60], 8)).toBeNull();
});

test("anywhere inside a module's box is the module", () => {
  expect(hitAt(scene, [250, 550], 8)).toMatchObject({ on: "part", part: "A1" });
});

test("a box takes what lies wholly inside it", () => {
  expect(idsInside(scene, { left: -100, top: -50, right: 500, bottom: 50 }).sort()).toEqual([
    "F1",
    "F2",
    "W1",
  ]);
});

test("wires that cross without touching hop, the flatter one over the steeper", () => {
  const hops = crossingsOf(scene);
  expect([...hops.keys()]).toEqual(["W1"]);
  const [x] = pinOf("F1:2");
  expect(hops.get("W1")).toEqual([{ segment: 0, along: 210 - x, over: "W2" }]);
});

test("wires that meet in a splice do not hop", () => {
  const joined = drawing(
    [
      { id: "F1", kind: "fuse", at: [0, 0] },
      { id: "X5", kind: "splice", at: [200, 0] },
      { id: "F2", kind: "fuse", at: [400, 0] },
      { id: "X1", kind: "ground", at: [200, 100] },
    ],
    [
      { id: "W1", from: "F1:2", to: "X5:1" },
      { id: "W2", from: "X5:1", to: "F2:1" },
      { id: "W3", from: "X5:1", to: "X1:1" },
    ],
  );
  expect(crossingsOf(sceneOf(joined.diagram, "s1")).size).toBe(0);
});

test("a run upon a wire is told from one that only crosses it or lies beside it", () => {
  expect(liesOnWire(scene, [100, 2], [300, 2], 5)).toBe(true);
  expect(liesOnWire(scene, [100, 20], [300, 20], 5)).toBe(false);
  expect(liesOnWire(scene, [150, -50], [150, 50], 5)).toBe(false);
});

test("an end snaps to a pin first, then to a wire, else it stays in line with where it came from", () => {
  const [x, y] = pinOf("F1:2");
  expect(snap(scene, [x + 5, y - 5], 12, null)).toMatchObject({ onto: "pin", ref: "F1:2" });
  expect(snap(scene, [150, 6], 12, null)).toEqual({
    onto: "wire",
    at: [150, 0],
    wire: "W1",
    way: [1, 0],
  });
  expect(snap(scene, [103, 60], 12, [100, 300])).toEqual({ onto: "ground", at: [100, 60] });
});

test("an end that comes straight down to a wire joins it straight below", () => {
  expect(snap(scene, [153, 6], 12, [150, 80])).toEqual({
    onto: "wire",
    at: [150, 0],
    wire: "W1",
    way: [1, 0],
  });
});
