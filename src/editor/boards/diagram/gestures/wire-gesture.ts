import { distance, type Point } from "../../../../base/index.ts";
import { layWire, type Snap, snap, type WireEnd } from "../../../../session/index.ts";
import type { Board, WireInHand } from "../board.ts";
import { pointsInHand } from "../drawing/draw-top.ts";
import type { Gesture, Press } from "./gesture.ts";

export const endOf = (at: Snap): WireEnd =>
  at.onto === "pin"
    ? { on: "pin", ref: at.ref }
    : at.onto === "wire"
      ? { on: "wire", wire: at.wire, at: at.at }
      : { on: "open", at: at.at };

const isFree = (board: Board) => {
  const { tool } = board.session.get();
  return tool.name === "wire" && tool.free;
};

function lastFixed(wire: WireInHand): Point {
  return wire.corners.at(-1) ?? wire.start.at;
}

export function snapNow(board: Board, now: Press, from: Point | null): Snap {
  const scene = board.scene();
  const reach = board.reach(now.touch) * 1.3;
  if (!scene) return { onto: "ground", at: now.sheet };
  return snap(scene, now.sheet, reach, from);
}

/** Shows where the wire in hand would go from a pointer that hovers. */
export function aimWire(board: Board, now: Press): void {
  const { wire } = board.get();
  if (!wire) return;
  board.show({ wire: { ...wire, target: snapNow(board, now, lastFixed(wire)) } });
}

/** Fixes the corners up to the pointer and goes on from there. */
function fixCorner(board: Board, wire: WireInHand, target: Snap): void {
  const points = pointsInHand(board, wire.start, wire.corners, target, isFree(board));
  const steps = [...wire.steps, wire.corners];
  board.show({ wire: { ...wire, corners: points.slice(1), steps, target } });
}

/** Ends the wire in hand at `target`; on empty ground it goes on, not traced. */
export function endWire(board: Board, target: Snap): void {
  const { wire } = board.get();
  const { sheet } = board.session.get();
  if (!wire || sheet === null) return;
  const aligned = inLineWithEnd(wire, target, board.reach(false), isFree(board));
  const corners = pointsInHand(board, wire.start, aligned, target, isFree(board)).slice(1, -1);
  const plan = { sheet, from: endOf(wire.start), to: endOf(target), corners };
  let laid: string | null = null;
  board.session.edit(
    target.onto === "ground" ? "Draw a wire that goes on" : "Draw a wire",
    (draft) => {
      laid = layWire(draft, plan);
    },
  );
  board.show({ wire: null });
  if (laid !== null) board.session.show({ selection: [laid] });
}

/**
 * The last fixed corner slid along its own line until it stands straight across from the end, where
 * it was meant to: within `reach`. Otherwise a pin a hair off would cost two more corners.
 */
function inLineWithEnd(
  wire: WireInHand,
  target: Snap,
  reach: number,
  free: boolean,
): readonly Point[] {
  const corner = wire.corners.at(-1);
  const before = wire.corners.at(-2) ?? wire.start.at;
  if (free || !corner || target.onto === "ground") return wire.corners;
  const axis = corner[1] === before[1] ? 0 : corner[0] === before[0] ? 1 : null;
  if (axis === null || Math.abs(corner[axis] - target.at[axis]) > reach) return wire.corners;
  const slid: Point = axis === 0 ? [target.at[0], corner[1]] : [corner[0], target.at[1]];
  return [...wire.corners.slice(0, -1), slid];
}

/** Enter: ends the wire on the ground where the pointer last was, or at its last corner. */
export function endWireHere(board: Board): void {
  const { wire } = board.get();
  if (!wire) return;
  const corner = wire.corners.at(-1);
  const still = corner && distance(corner, wire.target.at) < board.reach(false);
  if (still) endAtCorner(board, wire, corner);
  else endWire(board, wire.target);
}

/** The last corner becomes the wire's open end. */
function endAtCorner(board: Board, wire: WireInHand, corner: Point): void {
  const target: Snap = { onto: "ground", at: corner };
  board.show({ wire: { ...wire, corners: wire.corners.slice(0, -1), target } });
  endWire(board, target);
}

/** Escape: takes the last click back, then the wire itself. Returns whether there was one. */
export function backOutOfWire(board: Board): boolean {
  const { wire } = board.get();
  if (!wire) return false;
  const corners = wire.steps.at(-1);
  board.show({ wire: corners ? { ...wire, corners, steps: wire.steps.slice(0, -1) } : null });
  return true;
}

/**
 * Click by click or in one drag: starts on a pin, a wire or open ground; a click on ground fixes a
 * corner, a second click on that corner ends the wire there as going on; a pin or a wire ends it.
 */
export function wireGesture(board: Board, down: Press): Gesture {
  const begun = board.get().wire;
  if (!begun) {
    const start = snapNow(board, down, null);
    board.show({ wire: { start, corners: [], steps: [], target: start }, hover: null });
  } else aimWire(board, down);
  return {
    move: (now) => aimWire(board, now),
    up: (now, dragged) => {
      aimWire(board, now);
      const { wire } = board.get();
      if (!wire) return;
      const { target } = wire;
      if (!begun && !dragged) return;
      if (target.onto !== "ground") {
        endWire(board, target);
        return;
      }
      const corner = wire.corners.at(-1);
      const again = corner && distance(corner, target.at) < board.reach(now.touch);
      if (again && begun) endAtCorner(board, wire, corner);
      else fixCorner(board, wire, target);
    },
    cancel: () => board.show({ wire: begun }),
  };
}
