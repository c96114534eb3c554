import { type Box, growBox } from "../../../../base/index.ts";
import { fitBox } from "../../../../session/index.ts";
import type { Board } from "../board.ts";

/** Pixels of the view that stay free around what is shown. */
const MARGIN = 48;
const MOST_ZOOM = 2;

/** Brings a piece of the sheet into sight, as large as it can be. */
export function showBox(board: Board, box: Box): void {
  const { size } = board.get();
  const room = growBox(box, 4 * board.unit());
  if (size.width > 0) board.look(fitBox(room, size, MARGIN, MOST_ZOOM));
}
