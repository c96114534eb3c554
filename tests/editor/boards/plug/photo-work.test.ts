import { expect, test } from "vitest";
import {
  accepted,
  countedBy,
  dotAt,
  dotsOf,
  filledTo,
  redone,
  undone,
  withDot,
  withFill,
  withMovedDot,
  withoutDot,
  workOn,
} from "../../../../src/editor/boards/plug/photo-work.ts";

test("a fill waits for its count, and the next thing done puts it in", () => {
  const dragged = filledTo(withFill(workOn([]), "row", [0, 0], [10, 0]), [400, 0]);
  expect(dragged.dots).toEqual([]);
  expect(dotsOf(dragged)).toHaveLength(5);
  const counted = countedBy(dragged, -2);
  expect(dotsOf(counted).map((dot) => dot.at)).toEqual([
    [0, 0],
    [200, 0],
    [400, 0],
  ]);
  const next = withDot(counted, [9, 9]);
  expect(next.pending).toBeNull();
  expect(next.dots).toHaveLength(4);
});

test("one fill is one step back and one step forth, however many cavities it has", () => {
  const first = accepted(withFill(workOn([]), "ring", [50, 50], [50, 0]));
  const second = accepted(withFill(first, "row", [0, 200], [400, 200]));
  expect(second.dots).toHaveLength(13);
  expect(undone(second).dots).toEqual(first.dots);
  expect(undone(undone(second)).dots).toEqual([]);
  expect(redone(undone(second)).dots).toEqual(second.dots);
  expect(undone(undone(undone(second))).dots).toEqual([]);
});

test("undo takes a fill still waiting away and nothing more", () => {
  const one = withDot(workOn([]), [1, 1]);
  const waiting = withFill(one, "row", [0, 9], [99, 9]);
  expect(undone(waiting).dots).toEqual(one.dots);
  expect(undone(waiting).pending).toBeNull();
});

test("what is taken away or moved leaves the marks of the others alone", () => {
  const work = workOn([
    { at: [0, 0], mark: "30" },
    { at: [10, 0], mark: "85" },
    { at: [20, 0], mark: "86" },
  ]);
  expect(withoutDot(work, 1).dots.map((dot) => dot.mark)).toEqual(["30", "86"]);
  const moved = withMovedDot(work, 1, [10, 5]);
  expect(moved.dots[1]).toEqual({ at: [10, 5], mark: "85" });
  expect(undone(moved).dots).toEqual(work.dots);
});

test("a press takes hold of the nearest dot within reach, else of none", () => {
  const dots = [{ at: [0, 0] }, { at: [10, 0] }] as const;
  expect(dotAt(dots, [6, 0], 20)).toBe(1);
  expect(dotAt(dots, [30, 0], 19)).toBeNull();
});
