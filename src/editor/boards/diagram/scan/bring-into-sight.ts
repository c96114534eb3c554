import type { Box } from "../../../../base/index.ts";
import { viewBox } from "../../../../session/index.ts";
import type { Board } from "../board.ts";

/** What is smaller than this on the screen can't be read, pixels. */
const LEGIBLE = 9;
const ZOOM_TO = 16;
/** Pixels of the view between its edge and what was brought in over it. */
const MARGIN = 16;

/**
 * Moves the view no further than it takes to see a piece of the picture, and enlarges it where it would be too
 * small to read. `tall`: pixels of the picture, of what is to be read there.
 */
export function bringIntoSight(board: Board, box: Box, tall = leastSideOf(box)): void {
  const camera = board.camera();
  const { size } = board.get();
  if (size.width === 0) return;
  const seen = viewBox(camera, size);
  const isLegible = tall * camera.zoom >= LEGIBLE;
  if (isLegible) {
    const across = shift([box.left, box.right], [seen.left, seen.right], MARGIN / camera.zoom);
    const down = shift([box.top, box.bottom], [seen.top, seen.bottom], MARGIN / camera.zoom);
    if (across !== 0 || down !== 0)
      board.look({ ...camera, left: camera.left + across, top: camera.top + down });
    return;
  }
  const zoom = ZOOM_TO / tall;
  board.look({
    zoom,
    left: (box.left + box.right) / 2 - size.width / 2 / zoom,
    top: (box.top + box.bottom) / 2 - size.height / 2 / zoom,
  });
}

const leastSideOf = ({ left, top, right, bottom }: Box) => Math.min(right - left, bottom - top);

type Span = readonly [from: number, to: number];

/** How far a view must go along one axis to hold a span; with what is longer than it, to the span's middle. */
function shift([from, to]: Span, [start, end]: Span, margin: number): number {
  const room = (end - start - (to - from)) / 2;
  if (room < margin) return from >= start && to <= end ? 0 : (from + to - start - end) / 2;
  return Math.min(from - margin - start, 0) || Math.max(to + margin - end, 0);
}
