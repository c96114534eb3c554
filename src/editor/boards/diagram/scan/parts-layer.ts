import { boxContains, growBox } from "../../../../base/index.ts";
import { kindOf } from "../../../../circuit/index.ts";
import {
  type PartItem,
  type PartsDesk,
  partsDeskOf,
  type Sureness,
} from "../../../../session/index.ts";
import type { Palette } from "../../../theme/theme.tsx";
import { type Ink, write } from "../drawing/ink.ts";
import type { ScanLayer } from "./scan-layer.ts";

/** Room between what is printed and its frame, pixels of the screen. */
const ROOM = 6;
/** Height of the words on the screen, pixels. */
const TYPE = 13;
/** Frames smaller than this on the screen bear no words, pixels. */
const LEGIBLE = 34;
/** A finger needs this much about the middle, pixels of the screen. */
const FINGER = 22;

const DASHES: Readonly<Record<Sureness, readonly number[]>> = {
  sure: [9, 4],
  likely: [5, 5],
  maybe: [2, 5],
};

const colourOf = (palette: Palette, sureness: Sureness): string =>
  sureness === "sure" ? palette.agrees : sureness === "likely" ? palette.warning : palette.ink;

function drawItem({ canvas, palette, camera, ...ink }: Ink, item: PartItem, isChosen: boolean) {
  const { proposal, sureness, kind } = item;
  const pixel = 1 / camera.zoom;
  const { left, top, right, bottom } = growBox(proposal.box, ROOM * pixel);
  const colour = isChosen ? palette.path : colourOf(palette, sureness);
  canvas.save();
  canvas.strokeStyle = colour;
  canvas.lineWidth = (isChosen ? 3.5 : 2) * pixel;
  canvas.setLineDash(DASHES[sureness].map((length) => length * pixel));
  canvas.strokeRect(left, top, right - left, bottom - top);
  canvas.restore();
  // Seen from afar the frames say enough: words would lie over one another.
  const wide = Math.max(right - left, bottom - top) * camera.zoom;
  if (wide < LEGIBLE && !isChosen) return;
  const words = { canvas, palette, camera, ...ink };
  write(words, {
    text: sureness === "sure" ? kindOf(kind).title : `${kindOf(kind).title}? ${sureness}`,
    at: [left, top - TYPE * 0.7 * pixel],
    size: TYPE * pixel,
    colour,
    bold: isChosen,
  });
}

/** A dot that may be a joint or dirt is for tracing to tell: framed, it would only hide the picture. */
const seen = (desk: PartsDesk): readonly PartItem[] => [
  ...desk.joints().filter(({ sureness }) => sureness === "sure"),
  ...desk.items(),
];

/** Dashed frames around what may be parts, each with what it would be and how far that is to be believed. */
export const PARTS_LAYER: ScanLayer = {
  draw: (ink, { session }) => {
    const desk = partsDeskOf(session);
    if (!desk?.get().isOpen) return;
    const { chosen } = desk.get();
    for (const item of seen(desk)) if (item.id !== chosen) drawItem(ink, item, false);
    const last = [...desk.joints(), ...desk.items()].find(({ id }) => id === chosen);
    if (last) drawItem(ink, last, true);
  },
  watch: (session, redraw) => partsDeskOf(session)?.subscribe(redraw) ?? (() => {}),
  tap: (board, { sheet, touch }) => {
    const desk = partsDeskOf(board.session);
    if (!desk?.get().isOpen) return null;
    const pixel = 1 / board.camera().zoom;
    const reach = (touch ? 2 * ROOM : ROOM) * pixel;
    const hits = seen(desk).filter(({ proposal: { box } }) => {
      const finger = touch ? FINGER * pixel : 0;
      const short = Math.max(0, finger - Math.min(box.right - box.left, box.bottom - box.top) / 2);
      return boxContains(growBox(box, Math.max(reach, short)), sheet);
    });
    const areaOf = ({ proposal: { box } }: PartItem) =>
      (box.right - box.left) * (box.bottom - box.top);
    const hit = hits.sort((a, b) => areaOf(a) - areaOf(b))[0];
    return hit ? () => desk.choose(hit.id) : null;
  },
};
