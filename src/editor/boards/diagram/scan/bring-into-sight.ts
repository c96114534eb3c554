import type { Box } from "../../../../base/index.ts";
import { viewBox } from "../../../../session/index.ts";
import type { Board } from "../board.ts";

/** What is smaller than this on the screen can't be read, pixels. */
const LEGIBLE = 9;
const ZOOM_TO = 16;

/** Moves the view so that a piece of the picture is seen, and enlarges it where it would be too small to read. */
export function bringIntoSight(board: Board, box: Box): void {
  const camera = board.camera();
  const { size } = board.get();
  if (size.width === 0) return;
  const seen = viewBox(camera, size);
  const tall = Math.min(box.right - box.left, box.bottom - box.top);
  const isSeen =
    box.left > seen.left &&
    box.right < seen.right &&
    box.top > seen.top &&
    box.bottom < seen.bottom;
  const isLegible = tall * camera.zoom >= LEGIBLE;
  if (isSeen && isLegible) return;
  const zoom = isLegible ? camera.zoom : ZOOM_TO / tall;
  board.look({
    zoom,
    left: (box.left + box.right) / 2 - size.width / 2 / zoom,
    top: (box.top + box.bottom) / 2 - size.height / 2 / zoom,
  });
}
