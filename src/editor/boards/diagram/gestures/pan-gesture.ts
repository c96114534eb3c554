import { panBy } from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import { type Gesture, type Press, strayed } from "./gesture.ts";

/** Drags the sheet along. */
export function panGesture(board: Board, down: Press): Gesture {
  let [x, y] = down.view;
  return {
    move: (now) => {
      board.look(panBy(board.camera(), [now.view[0] - x, now.view[1] - y]));
      [x, y] = now.view;
    },
  };
}

/** A press that drags the sheet along once it leaves its spot, and is a tap where it does not. */
export function tapOrPan(board: Board, down: Press, tap: (now: Press) => void): Gesture {
  let pan: Gesture | null = null;
  return {
    move: (now) => {
      if (!pan && strayed(down, now)) pan = panGesture(board, down);
      pan?.move?.(now);
    },
    up: (now) => {
      if (!pan) tap(now);
    },
  };
}
