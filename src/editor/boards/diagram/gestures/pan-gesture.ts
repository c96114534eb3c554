import { panBy } from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import type { Gesture, Press } from "./gesture.ts";

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
