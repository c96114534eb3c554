import { pinAt, traceDeskOf } from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import type { Gesture, Press } from "../gestures/gesture.ts";
import { tapOrPan } from "../gestures/pan-gesture.ts";

/** A tap lights up the whole net of the pin or the line there; a drag moves the view. */
export function followGesture(board: Board, down: Press): Gesture {
  return tapOrPan(board, down, (now) => {
    const scene = board.scene();
    const reach = board.reach(now.touch);
    const pin = scene && pinAt(scene, now.sheet, reach);
    void traceDeskOf(board.session)?.follow(pin?.at ?? now.sheet, reach, pin?.ref ?? null);
  });
}

/** Lights up what the pointer is over. */
export function hoverNet(board: Board, at: Press | null): void {
  traceDeskOf(board.session)?.hover(at?.sheet ?? null, at ? board.reach(at.touch) : 0);
}
