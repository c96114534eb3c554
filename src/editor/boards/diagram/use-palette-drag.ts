import type { PointerEvent as ReactPointerEvent } from "react";
import { distance, type Point } from "../../../base/index.ts";
import type { PartKindName } from "../../../job/index.ts";
import { useBoard } from "./board-context.tsx";
import { placePart } from "./gestures/place-gesture.ts";

const STRAYED = 8;

/** Starts dragging a kind out of the palette; let go over the board it is laid down there. */
export function usePaletteDrag(onLeave: () => void) {
  const board = useBoard();
  return (kind: PartKindName, down: ReactPointerEvent) => {
    if (down.button !== 0) return;
    const surface = document.querySelector('[role="application"][aria-label="Diagram board"]');
    const start: Point = [down.clientX, down.clientY];
    let pulled = false;
    const over = (event: PointerEvent): Point | null => {
      const box = surface?.getBoundingClientRect();
      if (!box) return null;
      const at: Point = [event.clientX - box.left, event.clientY - box.top];
      const inside = at[0] >= 0 && at[1] >= 0 && at[0] <= box.width && at[1] <= box.height;
      return inside ? board.toSheet(at) : null;
    };
    const move = (event: PointerEvent) => {
      if (!pulled && distance(start, [event.clientX, event.clientY]) < STRAYED) return;
      if (!pulled) onLeave();
      pulled = true;
      const at = over(event);
      board.show({ ghost: at && { kind, at, turn: 0 } });
    };
    const stop = () => {
      removeEventListener("pointermove", move);
      removeEventListener("pointerup", up);
      removeEventListener("pointercancel", stop);
      removeEventListener("keydown", key, true);
      board.show({ ghost: null });
    };
    const up = (event: PointerEvent) => {
      const at = over(event);
      stop();
      if (!pulled) return;
      if (at) placePart(board, kind, at, 0);
      board.session.show({ tool: { name: "select" } });
    };
    const key = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      event.stopPropagation();
      stop();
    };
    addEventListener("pointermove", move);
    addEventListener("pointerup", up);
    addEventListener("pointercancel", stop);
    addEventListener("keydown", key, true);
  };
}
