import { type Box, boundsOf, type Point } from "../../base/index.ts";
import type { Id, Job } from "../../job/index.ts";
import { plain } from "./draft.ts";
import { moveThings } from "./move.ts";
import { type PartShape, shapeOf } from "./part-shape.ts";

export const ALIGNMENTS = ["left", "middle", "right", "top", "centre", "bottom"] as const;
/** `middle` puts parts in one column, `centre` in one row. */
export type Alignment = (typeof ALIGNMENTS)[number];

/** The coordinate that counts: an edge of the box, or the part's own `at` for the middles. */
function coordinate({ part, box }: PartShape, how: Alignment): number {
  if (how === "middle") return part.at[0];
  return how === "centre" ? part.at[1] : box[how];
}

function ofBox(box: Box, how: Alignment): number {
  if (how === "middle") return (box.left + box.right) / 2;
  return how === "centre" ? (box.top + box.bottom) / 2 : box[how];
}

/**
 * Lines parts up: with the first of several, or one part with the edge or middle of its picture
 * (of everything drawn, where the sheet has no picture). Wires follow.
 */
export function alignParts(draft: Job, ids: readonly Id[], how: Alignment): void {
  const { diagram } = plain(draft);
  const byId = new Map(diagram.parts.map((part) => [part.id, part]));
  const shapes = ids.flatMap((id) => byId.get(id) ?? []).map(shapeOf);
  const chief = shapes[0];
  if (!chief) return;
  const goal =
    shapes.length > 1
      ? coordinate(chief, how)
      : ofBox(pictureBox(draft, chief.part.sheet) ?? chief.box, how);
  const across = how === "left" || how === "middle" || how === "right";
  for (const shape of shapes) {
    const off = goal - coordinate(shape, how);
    const by: Point = across ? [off, 0] : [0, off];
    if (off !== 0) moveThings(draft, [shape.part.id], by);
  }
}

function pictureBox(draft: Job, sheet: Id): Box | null {
  const { diagram } = plain(draft);
  const image = diagram.sheets.find((one) => one.id === sheet)?.image;
  if (image) return { left: 0, top: 0, right: image.width, bottom: image.height };
  const boxes = diagram.parts
    .filter((part) => part.sheet === sheet)
    .map((part) => shapeOf(part).box);
  return boundsOf(
    boxes.flatMap((box): Point[] => [
      [box.left, box.top],
      [box.right, box.bottom],
    ]),
  );
}
