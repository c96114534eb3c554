import { boxContains, growBox } from "../../../../base/index.ts";
import { isSure, wordDeskOf } from "../../../../session/index.ts";
import type { ScanLayer } from "./scan-layer.ts";

/** Room between a word and its frame, pixels of the sheet. */
const ROOM = 5;

/** Frames around the words that are still to be written: dashed where there are doubts, thick for the one in hand. */
export const WORDS_LAYER: ScanLayer = {
  draw: ({ canvas, palette, camera }, { session }) => {
    const desk = wordDeskOf(session);
    if (!desk?.get().isOpen) return;
    const current = desk.current();
    const thin = 1.5 / camera.zoom;
    for (const item of desk.items()) {
      const isInHand = item.id === current?.id;
      if (item.state !== "open" && !isInHand) continue;
      const { left, top, right, bottom } = growBox(item.box, ROOM);
      canvas.save();
      canvas.strokeStyle = isInHand
        ? palette.path
        : isSure(item)
          ? palette.agrees
          : palette.warning;
      canvas.lineWidth = isInHand ? 3 * thin : thin;
      if (!isSure(item) && !isInHand) canvas.setLineDash([4 * thin, 3 * thin]);
      canvas.strokeRect(left, top, right - left, bottom - top);
      canvas.restore();
    }
  },
  watch: (session, redraw) => {
    const desk = wordDeskOf(session);
    return desk ? desk.subscribe(redraw) : () => {};
  },
  tap: ({ session }, { sheet, touch }) => {
    const desk = wordDeskOf(session);
    if (!desk?.get().isOpen) return null;
    const hit = desk
      .items()
      .filter(({ state }) => state === "open")
      .find(({ box }) => boxContains(growBox(box, touch ? 2 * ROOM : ROOM), sheet));
    return hit ? () => desk.go(hit.id) : null;
  },
};
