import type { Box, Point } from "../../../../base/index.ts";
import { kindOf } from "../../../../circuit/index.ts";
import type { Job, PartKindName } from "../../../../job/index.ts";
import { addPart, resizeModule, sheetForDrawing } from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import type { Gesture, Press } from "./gesture.ts";

const round = ([x, y]: Point): Point => [Math.round(x), Math.round(y)];

/** Lays a part of this kind down and selects it. */
export function placePart(
  board: Board,
  kind: PartKindName,
  at: Point,
  turn: number,
  shape?: (draft: Job, id: string) => void,
): void {
  let id = "";
  const label = `Place ${kindOf(kind).title}`;
  const { sheet } = board.session.get();
  board.session.edit(label, (draft) => {
    id = addPart(draft, kind, sheetForDrawing(draft, sheet), round(at), turn);
    shape?.(draft, id);
  });
  board.session.show({ selection: [id] });
}

const boxBetween = (a: Point, b: Point): Box => ({
  left: Math.min(a[0], b[0]),
  top: Math.min(a[1], b[1]),
  right: Math.max(a[0], b[0]),
  bottom: Math.max(a[1], b[1]),
});

/**
 * A click lays the armed part down where the pointer is, a drag where it is let go; a drag with a
 * module armed draws its box. With Shift the tool stays armed for the next one.
 */
export function placeGesture(board: Board, kind: PartKindName, down: Press): Gesture {
  const turn = board.get().ghost?.turn ?? 0;
  const drawsBox = kind === "module";
  board.show({ ghost: { kind, at: down.sheet, turn } });
  return {
    move: (now) => {
      if (drawsBox) board.show({ band: boxBetween(down.sheet, now.sheet), ghost: null });
      else board.show({ ghost: { kind, at: now.sheet, turn } });
    },
    up: (now, dragged) => {
      const band = board.get().band;
      board.show({ ghost: null, band: null });
      if (drawsBox && dragged && band) {
        const middle: Point = [(band.left + band.right) / 2, (band.top + band.bottom) / 2];
        const size: Point = [
          Math.max(4 * board.unit(), band.right - band.left),
          Math.max(4 * board.unit(), band.bottom - band.top),
        ];
        placePart(board, kind, middle, 0, (draft, id) => resizeModule(draft, id, size, middle));
      } else placePart(board, kind, now.sheet, turn);
      if (!now.shift) board.session.show({ tool: { name: "select" } });
    },
    cancel: () => board.show({ ghost: null, band: null }),
  };
}
