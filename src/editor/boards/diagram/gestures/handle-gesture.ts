import { type Point, subtract } from "../../../../base/index.ts";
import {
  boxAfter,
  type Handle,
  moveCorner,
  moveModulePin,
  moveWireEnd,
  orthogonalCorners,
  resizeModule,
  type Snap,
  setUnit,
  tidyCorners,
  turnParts,
  unitOf,
  wayOut,
} from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import { editGesture } from "./edit-gesture.ts";
import { type Gesture, type Press, strayed } from "./gesture.ts";

import { endOf, snapNow } from "./wire-gesture.ts";

const round = ([x, y]: Point): Point => [Math.round(x), Math.round(y)];

/** Takes hold of a handle of what is selected. */
export function handleGesture(board: Board, down: Press, handle: Handle): Gesture {
  switch (handle.grab) {
    case "size":
      return sizeGesture(board, down, handle);
    case "slide":
      return editGesture(board, `Move pin ${handle.pin}`, down, (draft, now) =>
        moveModulePin(draft, handle.part, handle.pin, now.sheet),
      );
    case "corner":
      return cornerGesture(board, down, handle);
    case "turn":
      return turnGesture(board, down, handle.part);
    case "scale":
      return scaleGesture(board, down, handle.part);
    case "end":
      return endGesture(board, down, handle);
  }
}

/** Reckons from the box as it was when the drag began: a preview must not build on a preview. */
function sizeGesture(
  board: Board,
  down: Press,
  { part, side }: Extract<Handle, { grab: "size" }>,
): Gesture {
  const scene = board.scene();
  return editGesture(board, `Resize ${part}`, down, (draft, now) => {
    const after = scene && boxAfter(scene, part, side, round(now.sheet));
    if (after) resizeModule(draft, part, after.size, after.middle);
  });
}

/** Lines a corner up with its neighbours when it comes near to being straight across from them. */
function cornerGesture(
  board: Board,
  down: Press,
  { wire, index }: Extract<Handle, { grab: "corner" }>,
): Gesture {
  const points = board.scene()?.wireById.get(wire)?.points ?? [];
  const neighbours = [points[index], points[index + 2]];
  const lined = (now: Press): Point => {
    const reach = board.reach(now.touch) / 2;
    const [x, y] = round(now.sheet);
    const near = (axis: 0 | 1, value: number) =>
      neighbours.find((one) => one && Math.abs(one[axis] - value) <= reach)?.[axis] ?? value;
    return [near(0, x), near(1, y)];
  };
  return editGesture(
    board,
    `Bend ${wire}`,
    down,
    (draft, now) => moveCorner(draft, wire, index, lined(now)),
    (draft) => tidyCorners(draft, wire),
  );
}

/** Follows the pointer round the part, in steps of 90° unless Shift is held (then 15°). A tap turns by 90°. */
function turnGesture(board: Board, down: Press, part: string): Gesture {
  const about = board.scene()?.partById.get(part)?.part.at ?? down.sheet;
  const angle = (press: Press) => {
    const [x, y] = subtract(press.sheet, about);
    return (Math.atan2(y, x) * 180) / Math.PI;
  };
  const turned = (now: Press) => {
    const step = now.shift ? 15 : 90;
    return Math.round((angle(now) - angle(down)) / step) * step;
  };
  const drag = editGesture(board, `Turn ${part}`, down, (draft, now) =>
    turnParts(draft, [part], turned(now)),
  );
  return {
    ...drag,
    up: (now, dragged) => {
      if (dragged) drag.up?.(now, dragged);
      else board.commit(`Turn ${part}`, (draft) => turnParts(draft, [part], 90));
    },
  };
}

const LEAST_UNIT = 1;

function scaleGesture(board: Board, down: Press, part: string): Gesture {
  const shape = board.scene()?.partById.get(part);
  if (!shape) return {};
  const before = unitOf(shape.part);
  const reach = (press: Press) => Math.hypot(...subtract(press.sheet, shape.part.at)) || 1;
  return editGesture(board, `Resize ${part}`, down, (draft, now) => {
    const unit = Math.max(LEAST_UNIT, before * (reach(now) / reach(down)));
    setUnit(draft, part, Math.round(unit * 2) / 2);
  });
}

/** Takes a wire's end off its pin and to another pin, another wire, or open ground. */
function endGesture(
  board: Board,
  down: Press,
  { wire, which }: Extract<Handle, { grab: "end" }>,
): Gesture {
  const shape = board.scene()?.wireById.get(wire);
  if (!shape) return {};
  const run = which === "to" ? shape.points : [...shape.points].reverse();
  const fixed = run.slice(0, -1);
  const other = which === "to" ? shape.wire.from : shape.wire.to;
  const square = run.every((point, i) => {
    const next = run[i + 1];
    return !next || Math.abs(point[0] - next[0]) < 0.01 || Math.abs(point[1] - next[1]) < 0.01;
  });
  const corners = (target: Snap): Point[] => {
    const last = fixed.at(-1) ?? target.at;
    const inner = fixed.slice(1);
    if (!square) return inner;
    const ends = [
      { at: last, out: null },
      { at: target.at, out: wayOut(target, last) },
    ] as const;
    return [...inner, ...orthogonalCorners(...ends)];
  };
  const show = (target: Snap) => {
    const start: Snap = { onto: "ground", at: fixed[0] ?? target.at };
    board.show({
      rewire: { points: [start.at, ...corners(target), target.at], onto: target.onto },
    });
  };
  let moved = false;
  return {
    move: (now) => {
      if (!moved && !strayed(down, now)) return;
      moved = true;
      show(snapNow(board, now, fixed.at(-1) ?? null));
    },
    up: (now) => {
      board.show({ rewire: null });
      if (!moved) return;
      const target = snapNow(board, now, fixed.at(-1) ?? null);
      const end = endOf(target);
      if (end.on === "pin" && end.ref === other) return;
      const path = which === "to" ? corners(target) : corners(target).reverse();
      board.commit(`Move the end of ${wire}`, (draft) =>
        moveWireEnd(draft, wire, which, end, path),
      );
    },
    cancel: () => board.show({ rewire: null }),
  };
}
