import { pinAt, traceDeskOf } from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import { type Gesture, type Press, strayed } from "../gestures/gesture.ts";
import { panGesture } from "../gestures/pan-gesture.ts";

/** A tap lights up the whole net of the pin or the line there; a drag moves the view. */
export function followGesture(board: Board, down: Press): Gesture {
  let pan: Gesture | null = null;
  return {
    move: (now) => {
      if (!pan && strayed(down, now)) pan = panGesture(board, down);
      pan?.move?.(now);
    },
    up: (now) => {
      if (pan) return;
      const scene = board.scene();
      const reach = board.reach(now.touch);
      const pin = scene && pinAt(scene, now.sheet, reach);
      void traceDeskOf(board.session)?.follow(pin?.at ?? now.sheet, reach, pin?.ref ?? null);
    },
  };
}

/** Lights up what the pointer is over. */
export function hoverNet(board: Board, at: Press | null): void {
  traceDeskOf(board.session)?.hover(at?.sheet ?? null, at ? board.reach(at.touch) : 0);
}
