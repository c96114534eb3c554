import type { Job } from "../../../../job/index.ts";
import type { Board } from "../board.ts";
import { type Gesture, type Press, strayed } from "./gesture.ts";

/** A drag shown as it goes and made one edit when it is let go. */
export function editGesture(
  board: Board,
  label: string,
  down: Press,
  change: (draft: Job, now: Press) => void,
  settle?: (draft: Job) => void,
): Gesture {
  let moved = false;
  return {
    move: (now) => {
      if (!moved && !strayed(down, now)) return;
      moved = true;
      board.preview((draft) => change(draft, now));
    },
    up: (now) => {
      if (!moved) return;
      board.commit(label, (draft) => {
        change(draft, now);
        settle?.(draft);
      });
    },
    cancel: () => board.show({ preview: null }),
  };
}
